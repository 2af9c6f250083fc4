//! Handrails: needed or not, how high, what can be held, what is left of the stair.

use super::known::Known;
use super::say::{answer, breaks, by, count, decides, detail, exact, inch, limit, mind, reply, s, stop, w};
use super::{Answer, Trouble};
use crate::figure::{Fig, Why};
use crate::grammar::ask::Size;
use crate::job::Settings;
use crate::limits;
use crate::measure::Lumber;
use crate::reply::{Line, Span, Status};
use crate::solve::in_force;
use crate::stairs::grip::{Grip, Section, Verdict, grip as judged, of_lumber};
use crate::stairs::{Unready, handrail};

/// "do I need a handrail".
pub fn needed(known: &Known) -> Answer {
    let here = known.here();
    let (risers, said) = match known.given.steps {
        Some(steps) => (steps, steps_said(steps)),
        None => match known.told().risers {
            Some(risers) => (risers, None),
            None => (known.flight().map_err(how_many)?.riser_count(), None),
        },
    };
    let need = handrail::needed(risers);
    let mut lines = vec![answer([
        w(if need { "Yes: " } else { "No: " }),
        count(risers, "the risers"),
        w(" riser"),
        s(risers),
        w(if need {
            ", and from four on a handrail is asked for."
        } else {
            ", and a handrail is asked for from four on."
        }),
    ])];
    lines.extend(said);
    lines.push(by(here, &limits::HANDRAIL_RISERS));
    if need {
        lines.push(by(here, &limits::HANDRAIL_LOW));
    }
    lines.push(detail([
        w("The guard is another matter: it goes by the drop, more than "),
        limit(here, &limits::GUARD_TRIGGER),
        w("."),
    ]));
    lines.push(decides());
    let n = Fig::count(u64::from(risers), Why::Told("the risers"));
    let mut reply = reply(lines);
    reply.values.more = vec![("risers", n.clone())];
    Ok((reply, vec![("risers", n)]))
}

/// Nothing told of the rise: the risers are all it takes.
fn how_many(trouble: Trouble) -> Trouble {
    match trouble {
        Trouble::Unready(Unready::Untold(_)) => Trouble::Ask(
            "How many risers are there, the step up onto the decking counted? From four on a handrail is asked for on at least one side.",
        ),
        other => other,
    }
}

/// "3 steps": three risers, or three treads below the decking, which are four.
fn steps_said(steps: u16) -> Option<Line> {
    let doubt = handrail::needed(steps) != handrail::needed(steps.saturating_add(1));
    let more = count(steps.saturating_add(1), "the treads and the step up onto the decking");
    let spans = if doubt {
        vec![
            w(
                "Count the risers, the step up onto the decking among them: if those are treads below the decking there are ",
            ),
            more,
            w(" risers, and then it is asked for."),
        ]
    } else {
        vec![
            w("Risers are what counts: if those are treads below the decking there are "),
            more,
            w("; the answer is the same."),
        ]
    };
    Some(detail(spans))
}

/// "how high is the handrail".
pub fn height(known: &Known) -> Answer {
    let here = known.here();
    let told = known.given.size(Size::Height).or(known.flight.height);
    let mut lines = match told {
        None => vec![answer([
            limit(here, &limits::HANDRAIL_LOW),
            w(" to "),
            limit(here, &limits::HANDRAIL_HIGH),
            w(", plumb above the line of the nosings."),
        ])],
        Some(l) if handrail::height_holds(l, here) => vec![answer([
            inch(&Fig::told(l, "the handrail")),
            w(" is within "),
            limit(here, &limits::HANDRAIL_LOW),
            w(" to "),
            limit(here, &limits::HANDRAIL_HIGH),
            w(", if that is plumb above the line of the nosings."),
        ])],
        Some(l) => vec![answer([
            w("No: "),
            inch(&Fig::told(l, "the handrail")),
            w(" is outside "),
            limit(here, &limits::HANDRAIL_LOW),
            w(" to "),
            limit(here, &limits::HANDRAIL_HIGH),
            w(", plumb above the line of the nosings."),
        ])],
    };
    lines.push(by(here, &limits::HANDRAIL_LOW));
    lines.push(by(here, &limits::STAIR_GUARD_LOW));
    lines.push(decides());
    let (low, high) = (in_force(here, &limits::HANDRAIL_LOW), in_force(here, &limits::HANDRAIL_HIGH));
    let mut reply = reply(lines);
    reply.values.more = vec![("handrail_low", low.clone()), ("handrail_high", high.clone())];
    Ok((reply, vec![("lowest", low), ("highest", high)]))
}

/// "how high is the stair rail": the guard's, whose top may be the handrail too.
pub fn stair_rail(known: &Known) -> Answer {
    let here = known.here();
    let law = &known.job.settings.law;
    if !law.holds(&limits::STAIR_GUARD_LOW) {
        let says = "I hold no height for a stair rail there, and the IRC's says nothing: ask the building department.";
        return Ok((reply(vec![answer([w(says)])]), Vec::new()));
    }
    let least = in_force(known.job, &limits::STAIR_GUARD_LOW);
    let told = known.flight.height.map(|l| Fig::told(l, "the stair rail's height"));
    let mut first = match &told {
        Some(told) => vec![inch(told), w(" plumb above the line of the nosings, as you told me. It is at least ")],
        None => vec![w("At least ")],
    };
    first.extend([
        exact(&least),
        w(" plumb above the line of the nosings, and no more than "),
        limit(here, &limits::HANDRAIL_HIGH),
        w(" where its top is the handrail."),
    ]);
    let lines = vec![answer(first), by(here, &limits::STAIR_GUARD_LOW), by(here, &limits::HANDRAIL_LOW), decides()];
    let mut reply = reply(lines);
    reply.values.result = told.or(Some(least.clone()));
    Ok((reply, vec![("the least", least)]))
}

/// "how does the handrail end".
pub fn ends(known: &Known) -> Answer {
    let here = known.here();
    let lines = vec![
        answer([w(
            "Unbroken from plumb above the top nosing to plumb above the lowest, its ends returned to a wall, guard, walking surface or itself, or into a newel.",
        )]),
        by(here, &limits::HANDRAIL_ENDS),
        mind(&limits::HANDRAIL_ENDS),
        by(here, &limits::HANDRAIL_SPACE),
        by(here, &limits::HANDRAIL_PROJECTION),
        decides(),
    ];
    Ok((
        reply(lines),
        vec![
            ("clear of the wall", in_force(here, &limits::HANDRAIL_SPACE)),
            ("into the stair", in_force(here, &limits::HANDRAIL_PROJECTION)),
        ],
    ))
}

/// "how far off the wall is the handrail".
pub fn space(known: &Known) -> Answer {
    let here = known.here();
    let (least, most) = (in_force(here, &limits::HANDRAIL_SPACE), in_force(here, &limits::HANDRAIL_PROJECTION));
    let lines = vec![
        answer([
            w("At least "),
            inch(&least),
            w(" clear of the wall or guard beside it, and no more than "),
            inch(&most),
            w(" out into the stair."),
        ]),
        by(here, &limits::HANDRAIL_SPACE),
        by(here, &limits::HANDRAIL_PROJECTION),
        decides(),
    ];
    let mut reply = reply(lines);
    reply.values.result = Some(least.clone());
    Ok((reply, vec![("clear of the wall", least), ("into the stair", most)]))
}

/// "is a 2x6 cap a handrail".
pub fn grip(known: &Known) -> Answer {
    let here = known.here();
    let g = known.given;
    let section = match (g.lumber, g.size(Size::Round), g.size(Size::Across), g.size(Size::Deep)) {
        (Some(lumber), ..) => of_lumber(lumber)
            .ok_or(Trouble::Ask("That is no size of lumber I know: say how wide and how deep it is."))?,
        (_, Some(round), ..) => Section::Round(round),
        (_, _, Some(wide), deep) => Section::Box(wide, deep.unwrap_or(wide)),
        _ => return Ok(shapes(here)),
    };
    let found = judged(section, here).ok_or(Trouble::PastMe)?;
    let mut lines = vec![answer(verdict(g.lumber, &found)), measured(&found)];
    lines.push(by(here, &limits::HANDRAIL_GRIP));
    if matches!(found.verdict, Verdict::OnlyWithRecess(_)) {
        lines.push(mind(&limits::GRIP_AROUND_MOST));
        lines.push(detail([
            w("A wide cap may top the guard; the handrail is then a rail of its own inside it, "),
            limit(here, &limits::HANDRAIL_SPACE),
            w(" clear."),
        ]));
    }
    lines.push(decides());
    let mut reply = reply(lines);
    let mut figs = vec![("corner to corner", found.across.clone())];
    figs.extend(found.around.iter().map(|f| ("around", f.clone())));
    reply.values.more =
        figs.iter().map(|(n, f)| (if *n == "around" { "around" } else { "across" }, f.clone())).collect();
    Ok((reply, figs))
}

/// What a handrail may be, where no section was named.
fn shapes(here: &Settings) -> (crate::reply::Reply, super::Figs) {
    let lines = vec![
        answer([w(limits::HANDRAIL_GRIP.says), stop(limits::HANDRAIL_GRIP.says)]),
        mind(&limits::HANDRAIL_GRIP),
        by(here, &limits::GRIP_AROUND_MOST),
        decides(),
    ];
    (
        crate::reply::Reply { status: Status::Answered, ..reply(lines) },
        vec![("around", in_force(here, &limits::GRIP_AROUND_LEAST))],
    )
}

fn verdict(lumber: Option<Lumber>, found: &Grip) -> Vec<Span> {
    let what = lumber.map_or(Span::Say("that"), |l| Span::Phrase(format!("a {l}")));
    match &found.verdict {
        Verdict::Grips => vec![w("Yes: "), what, w(" can be gripped as a handrail.")],
        Verdict::OnlyWithRecess(_) => vec![
            w("No: "),
            what,
            w(" is too big to close a hand on; it would pass only with a finger recess cut along both sides."),
        ],
        Verdict::Fails(limit) => vec![w("No: "), what, w(" breaks this: "), w(limit.says), stop(limit.says)],
    }
}

fn measured(found: &Grip) -> Line {
    match &found.around {
        Some(around) => {
            detail([w("It measures "), exact(around), w(" around and "), exact(&found.across), w(" corner to corner.")])
        }
        None => detail([w("A round rail goes by its diameter alone, "), exact(&found.across), w(".")]),
    }
}

/// "how much of the stair is left beside the handrail".
pub fn width_left(known: &Known) -> Answer {
    let here = known.here();
    let width = known.clear_width().ok_or(Trouble::Ask("How wide are the stairs, clear?"))?;
    let out = known.or_taken(Size::Projection, None, "how far the handrail stands in", &limits::HANDRAIL_PROJECTION);
    let one = handrail::width_left(&width, &out, 1);
    let two = handrail::width_left(&width, &out, 2);
    let mut lines =
        vec![answer([exact(&one.clear), w(" beside one handrail, "), exact(&two.clear), w(" between two.")])];
    lines.push(detail([
        w("The handrail stands "),
        inch(&out),
        w(" into the stair: "),
        w(if known.given.size(Size::Projection).is_some() { "told." } else { "taken as the most it may." }),
    ]));
    if known.posts_narrow(&width) {
        lines.push(detail([
            w("The posts beside the stairs stand in that width: "),
            exact(&width),
            w(" is clear between them, and the handrails are taken off that."),
        ]));
    }
    for left in [&one, &two] {
        if left.holds(here) {
            lines.push(by(here, left.least));
        } else {
            lines.push(breaks(here, &left.clear, left.least));
        }
    }
    lines.push(decides());
    let mut reply = reply(lines);
    reply.values.result = Some(one.clear.clone());
    reply.values.more = vec![("beside_one", one.clear.clone()), ("between_two", two.clear.clone())];
    Ok((reply, vec![("beside one handrail", one.clear), ("between two", two.clear)]))
}
