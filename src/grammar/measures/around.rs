//! What stands around a measure: shades ("heavy", "shy") and "about".

use super::cursor::{At, Step, Ways, hyphen, is, miss, role};
use super::finish::Found;
use super::fraction::shade;
use super::number::starts;
use super::role::Role;
use crate::measure::{Meaning, Measure, Shade};
use nom::Parser;
use nom::branch::alt;
use nom::combinator::opt;

/// What was said in front of a measure.
#[derive(Clone, Copy, Default)]
struct Before {
    shade: Option<Shade>,
    about: bool,
}

/// Every measure that starts here, with what stands in front of it and after it.
pub(super) fn around<'a>(i: At<'a>, core: impl Fn(At<'a>) -> Vec<Found<'a>>) -> Vec<Found<'a>> {
    let mut found = core(i);
    for (from, before) in before(i) {
        found.extend(core(from).into_iter().map(|f| mark(f, before)));
    }
    if let Ok((from, ())) = is(Role::Article).parse(i) {
        found.extend(core(from).into_iter().filter(|f| matches!(f.measure.meaning, Meaning::Lumber(_))));
    }
    let after: Vec<Found<'_>> = found.iter().flat_map(after).collect();
    found.extend(after);
    found
}

fn mark<'a>(f: Found<'a>, before: Before) -> Found<'a> {
    let measure = Measure { about: f.measure.about || before.about, ..f.measure };
    Found { measure, ..f }.shaded(before.shade)
}

/// "about", "like a", "a strong", "about a heavy", "a hair over".
fn before(i: At<'_>) -> Ways<'_, Before> {
    let about = is(Role::About).parse(i).ok().map(|(rest, ())| rest);
    let from = about.unwrap_or(i);
    let about = about.is_some();
    let article = is(Role::Article).parse(from).ok().map(|(rest, ())| rest);
    let mut ways: Ways<'_, Before> = Vec::new();
    for place in [from].into_iter().chain(article) {
        let shade = alt((beyond, shade)).parse(place).ok();
        ways.extend(shade.map(|(rest, s)| (rest, Before { shade: Some(s), about })));
        ways.extend(about.then_some((place, Before { shade: None, about })));
    }
    ways
}

/// "hair over", "touch under".
fn beyond(i: At<'_>) -> Step<'_, Shade> {
    let over = role(|r| if let Role::Beyond(s) = r { Some(s) } else { None });
    (is(Role::Little), over).map(|((), s)| s).parse(i)
}

/// The measure again with each thing said after it: "shy", "a hair strong", "+", "-ish", "or so".
fn after<'a>(f: &Found<'a>) -> Vec<Found<'a>> {
    let mut found = Vec::new();
    if let Ok((rest, s)) = shade_after(f.rest) {
        found.push(Found { rest, ..f.clone() }.shaded(Some(s)));
    }
    if let Ok((rest, ())) = is(Role::AboutAfter).parse(hyphen(f.rest)) {
        found.push(mark(Found { rest, ..f.clone() }, Before { shade: None, about: true }));
    }
    found
}

/// A shade after a measure. With a number after it "plus" adds, and "5 heavy 1/4" is
/// nobody's shade.
fn shade_after(i: At<'_>) -> Step<'_, Shade> {
    let little = opt((opt(is(Role::Article)), is(Role::Little)));
    let only_after = role(|r| if let Role::ShadeAfter(s) = r { Some(s) } else { None });
    let (rest, (_, s)) = (little, alt((shade, beyond, only_after))).parse(i)?;
    if starts(rest) { miss() } else { Ok((rest, s)) }
}
