//! Layouts against figures worked outside the program.

use railhand::job::{Basis, End, Fact, Fall, FlightFact, Job, PostRole, PostSize, RunId, RunPatch, Setting, Told};
use railhand::layout::{Placed, clear_max, lay_out};
use railhand::measure::{Length, Lumber, decimal};
use railhand::rules;

fn job(inches: i64, basis: Option<Basis>, bays: Option<u16>, settings: &[Setting]) -> Job {
    let run = RunPatch {
        length: Some(Told::plain(Length::inches(inches))),
        basis,
        from: Some(End::Corner),
        to: Some(End::StairHead),
        bays: Some(bays),
        ..RunPatch::default()
    };
    let facts: Vec<Fact> = settings.iter().map(|s| Fact::Set(*s)).chain([Fact::Run(RunId(1), run)]).collect();
    Job::default().with_all(&facts).expect("a possible job")
}

fn placed(job: &Job) -> Placed {
    lay_out(job).runs[0].result.clone().expect("it can be laid out")
}

const SIX_BY_SIX: Setting = Setting::Post(PostRole::All, PostSize::Lumber(Lumber::SIX_BY_SIX));

/// Worked check derived from AWC DCA 6 spacing (6 ft on centre, DCA 6, from memory) and
/// PS 20 dressed sizes: 16 ft is 3 bays of 59.3333 clear, 62.8333 on centre, 4 posts;
/// 20 ft is 4 bays of 55.625, 59.125, 5 posts.
#[test]
fn section_layout_by_the_deck_guide() {
    let rows = [(192, 4, 3, "59.333333", "62.833333"), (240, 5, 4, "55.625", "59.125")];
    for (inches, posts, bays, clear, centre) in rows {
        let p = placed(&job(inches, None, None, &[]));
        assert_eq!((p.posts.len(), p.bays.len()), (posts, bays), "{inches}");
        for bay in &p.bays {
            assert_eq!(decimal(bay.clear.as_q()).0, clear);
            assert_eq!(decimal(bay.centre.as_ref().expect("posts on both sides").as_q()).0, centre);
        }
    }
}

/// Worked check derived from AWC DCA 6 spacing and PS 20 sizes: posts 72 on centre leave
/// 68 1/2 clear between 4x4s, 66 1/2 between 6x6s.
#[test]
fn six_feet_on_centre_in_the_clear() {
    let two_at_72 = placed(&job(72, Some(Basis::Centre), None, &[]));
    assert_eq!((two_at_72.bays.len(), decimal(two_at_72.bays[0].clear.as_q()).0.as_str()), (1, "68.5"));
    for (settings, clear) in [(&[][..], "68.5"), (&[SIX_BY_SIX][..], "66.5")] {
        let most = clear_max(&job(72, None, None, settings)).expect("a limit is in force");
        assert_eq!(decimal(most.as_q()).0, clear);
    }
}

/// Equal passes, one sixteenth more does not: the spacing is "no more than" 6 ft.
/// Source of the 72: AWC DCA 6, from memory.
#[test]
fn exactly_the_limit_passes() {
    for (sixteenths, bays) in [(72 * 16, 1), (72 * 16 + 1, 2), (144 * 16, 2), (144 * 16 + 1, 3)] {
        let mut job = job(72, Some(Basis::Centre), None, &[]);
        job.runs[0].length = Some(Told::plain(Length::sixteenths(sixteenths)));
        assert_eq!(placed(&job).bays.len(), bays, "{sixteenths} sixteenths");
    }
}

/// By hand from PS 20 sizes: 15 ft outside to outside in 3 bays is (180 - 14)/3 = 55 1/3
/// clear; in 2 bays (180 - 10 1/2)/2 = 84 3/4, 88 1/4 on centre, over AWC DCA 6's 6 ft.
#[test]
fn fifteen_feet_in_three_bays_and_in_two() {
    for (bays, clear, stops) in [(3, "55.333333", 0), (2, "84.75", 1)] {
        let job = job(180, Some(Basis::Overall), Some(bays), &[]);
        assert_eq!(decimal(placed(&job).bays[0].clear.as_q()).0, clear);
        let found = rules::check(&job, &lay_out(&job));
        let over = found.iter().filter(|f| f.rule == "post-spacing-over-published").count();
        assert_eq!(over, stops, "{bays} bays");
    }
}

/// By hand from PS 20 sizes (a 4x4 is 3 1/2): "10 ft corner to stair head" puts the end
/// posts' centres 116 1/2 apart out to out, 120 by centres, 123 1/2 in the clear.
#[test]
fn ten_feet_on_each_basis() {
    for (basis, apart) in [(Basis::Overall, "116.5"), (Basis::Centre, "120"), (Basis::Clear, "123.5")] {
        let p = placed(&job(120, Some(basis), None, &[]));
        let centre = |i: usize| p.posts[i].at.as_q();
        assert_eq!(decimal(centre(p.posts.len() - 1) - centre(0)).0, apart, "{basis:?}");
    }
}

/// Worked check W10 and IRC R312.1.1 (more than 30 in., to the lowest ground within 36 in. of the edge; checked
/// for 2018 and 2024): exactly 30 asks for no guard, 30 1/4 does. 28 at the edge and ground that falls 12 in. in
/// 10 ft, 1 in 10: 36/10 = 3.6 more, 31.6, asks for one. 1/2 in. to the foot, 1 in 24: 36/24 = 1 1/2 more, 29 1/2,
/// does not. Ground that rises takes nothing off: 31 at the edge asks for one.
#[test]
fn a_drop_that_asks_for_a_guard() {
    let fall = |by: (i128, i128), over: i64| {
        let by = Length::new(by.0, by.1).expect("small");
        Fact::Flight(FlightFact::Fall(Fall { by, over: Length::inches(over) }))
    };
    let rows = [
        (Length::inches(30), None, "30", false),
        (Length::sixteenths(484), None, "30.25", true),
        (Length::inches(28), Some(fall((12, 1), 120)), "31.6", true),
        (Length::inches(28), Some(fall((1, 2), 12)), "29.5", false),
        (Length::inches(31), Some(fall((-12, 1), 120)), "31", true),
    ];
    for (edge, fall, drop, asks) in rows {
        let facts: Vec<Fact> = [Fact::Set(Setting::Grade(edge))].into_iter().chain(fall).collect();
        let job = Job::default().with_all(&facts).expect("a possible job");
        assert_eq!(
            decimal(railhand::solve::known(&job, railhand::quantity::RowId::Drop).expect("a drop").as_q()).0,
            drop
        );
        let found = rules::check(&job, &lay_out(&job));
        assert_eq!(found.iter().any(|f| f.rule == "guard-required"), asks, "{drop}");
    }
}
