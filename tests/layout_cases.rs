//! Layouts of gates, stairs, walls and mixed posts, one row a case; worked by hand from
//! PS 20 dressed sizes (a 4x4 is 3 1/2, a 6x6 5 1/2) unless a row says otherwise.

mod common;

use common::{basis, bays, centres, clears, frac, gate, inches, laid, placed, run, stairs};
use pretty_assertions::assert_eq;
use railhand::job::{
    Basis, End, GateAt, HouseEnd, Job, PostRole, PostSize, Run, RunId, RunPatch, Setting, StairAt, StairOpening, Told,
};
use railhand::layout::{BayKind, Lack, Part, stretches, values};
use railhand::measure::{Length, Lumber};

fn half(n: i128) -> Length {
    frac(n, 2)
}

fn quarter(n: i128) -> Length {
    frac(n, 4)
}

const BIG: PostSize = PostSize::Lumber(Lumber::SIX_BY_SIX);

#[test]
fn marks_run_from_what_the_tape_hooks_on() {
    let ten = |from| run(inches(120), from, End::StairHead);
    let clear = |p| basis(p, Basis::Clear);
    let rows = [
        (ten(End::Corner), "the outside face of the corner post", [quarter(7), inches(60), quarter(473)]),
        (clear(ten(End::Corner)), "the inside face of the corner post", [-quarter(7), inches(60), quarter(487)]),
        (basis(ten(End::Corner), Basis::Centre), "the centre of the corner post", [inches(0), inches(60), inches(120)]),
        (ten(End::House), "the siding", [quarter(7), inches(60), quarter(473)]),
        (ten(End::Wall), "the wall", [quarter(7), inches(60), quarter(473)]),
    ];
    for (patch, origin, marks) in rows {
        let layout = laid(&[], patch);
        assert_eq!((placed(&layout).origin, centres(placed(&layout))), (origin, marks.to_vec()));
    }
}

#[test]
fn a_bracket_at_the_house_has_no_post_and_no_width() {
    for basis_told in [Basis::Overall, Basis::Clear, Basis::Centre] {
        let patch = basis(run(inches(100), End::House, End::House), basis_told);
        let layout = laid(&[Setting::HouseEnd(HouseEnd::Bracket)], patch);
        let p = placed(&layout);
        assert_eq!((p.origin, p.overall, centres(p)), ("the siding", inches(100), vec![inches(50)]));
        assert_eq!(clears(p), vec![quarter(193); 2]);
        assert!(p.bays.iter().all(|b| b.centre.is_none()));
    }
}

/// Kinds, clears and centres of every bay and opening, whatever stands in the run.
#[test]
fn gates_and_stairs_take_their_place() {
    let open = |from, to| run(inches(120), from, to);
    let three = Some(inches(36));
    // A gate at a corner: its far jamb stands 36 clear from the corner post.
    let layout = laid(&[], gate(open(End::Corner, End::House), GateAt::From, three));
    let p = placed(&layout);
    assert_eq!(p.bays[0].kind, BayKind::Gate);
    // 120 less three posts and the gate leaves 73 1/2, 77 on centre: two bays of 35.
    assert_eq!(clears(p), vec![inches(36), inches(35), inches(35)]);
    assert_eq!(
        p.posts.iter().map(|p| p.kind.name()).collect::<Vec<_>>(),
        ["corner", "gate post", "line post", "house"]
    );
    // The same gate at the other end is the mirror image.
    let layout = laid(&[], gate(open(End::House, End::Corner), GateAt::To, three));
    assert_eq!(clears(placed(&layout)), vec![inches(35), inches(35), inches(36)]);
    // In the middle: 42 of run each side of a 36 gate in 10 ft, as open as 35 clear.
    let layout = laid(&[], gate(open(End::Corner, End::Corner), GateAt::Middle, three));
    assert_eq!(clears(placed(&layout)), vec![inches(35), inches(36), inches(35)]);
    let flanks = placed(&layout).flanks.clone().expect("a gate in the middle has two flanks");
    assert_eq!(flanks.map(|f| f.as_length()), [Some(inches(42)); 2]);
    // 24 from the start: 17 clear between the corner post and the jamb that end at 24; 60 less two posts is 53 behind it.
    let at = |at| laid(&[], gate(open(End::Corner, End::Corner), at, three));
    let layout = at(GateAt::OffFrom(inches(24)));
    assert_eq!(clears(placed(&layout)), vec![inches(17), inches(36), inches(53)]);
    let flanks = placed(&layout).flanks.clone().expect("a gate within the run has two flanks");
    assert_eq!(flanks.map(|f| f.as_length()), [Some(inches(24)), Some(inches(60))]);
    // From the end it is the mirror image.
    let layout = at(GateAt::OffTo(inches(24)));
    assert_eq!(clears(placed(&layout)), vec![inches(53), inches(36), inches(17)]);
    // At a stair head the leaf hangs beyond the run and takes nothing out of it.
    let layout = laid(&[], gate(open(End::Corner, End::StairHead), GateAt::To, three));
    assert_eq!(clears(placed(&layout)), vec![quarter(219); 2]);
    assert_eq!(placed(&layout).beyond.as_ref().and_then(|f| f.as_length()), three);
}

#[test]
fn a_stair_opening_stops_the_guard_at_both_sides() {
    let eighteen = run(inches(216), End::Corner, End::Corner);
    let layout = laid(&[], stairs(eighteen.clone(), inches(48), StairAt::Middle));
    let p = placed(&layout);
    // 84 each side less two posts: 77 clear is 80 1/2 on centre, so two bays of 36 3/4.
    assert_eq!(clears(p), vec![quarter(147), quarter(147), inches(48), quarter(147), quarter(147)]);
    let flank = p.flanks.clone().expect("stairs leave two flanks");
    assert_eq!(flank.map(|f| f.as_length()), [Some(inches(84)); 2]);
    assert_eq!(values(&layout).bays.len(), 4, "the open way to the stairs is no bay");
    // A gate in the middle of the run hangs across stairs in the middle.
    let both = gate(stairs(eighteen, inches(48), StairAt::Middle), GateAt::Middle, None);
    let layout = laid(&[], both);
    assert_eq!(values(&layout).bays.iter().filter(|b| b.gate).count(), 1);
    // Stairs at the very end of a run leave one stretch and no post at that end.
    let end = stairs(run(inches(120), End::Corner, End::Corner), inches(48), StairAt::FromLeft(inches(0)));
    let layout = laid(&[], end);
    let kinds: Vec<_> = placed(&layout).posts.iter().map(|p| p.kind.name()).collect();
    assert_eq!(kinds, ["stair head", "corner"]);
}

#[test]
fn each_stretch_is_a_little_run() {
    let with = |at| Run {
        length: Some(Told::plain(inches(252))),
        from: Some(End::House),
        to: Some(End::Corner),
        stairs: StairOpening::new(inches(48), at).into(),
        ..Run::untold(RunId(1))
    };
    let rows = [
        (StairAt::Middle, vec![(Part::Left, 102), (Part::Right, 102)]),
        (StairAt::FromLeft(inches(60)), vec![(Part::Left, 60), (Part::Right, 144)]),
        (StairAt::FromRight(inches(60)), vec![(Part::Left, 144), (Part::Right, 60)]),
        (StairAt::FromLeft(inches(0)), vec![(Part::Right, 204)]),
    ];
    for (at, want) in rows {
        let got: Vec<_> = stretches(&Job::default(), &with(at)).iter().map(|s| (s.part, s.length)).collect();
        assert_eq!(got, want.into_iter().map(|(p, l)| (p, Some(inches(l)))).collect::<Vec<_>>());
    }
    let both = stretches(&Job::default(), &with(StairAt::Middle));
    assert_eq!((both[0].from, both[0].to), (Some(End::House), Some(End::StairHead)));
    assert_eq!((both[1].from, both[1].to), (Some(End::StairHead), Some(End::Corner)));
}

#[test]
fn what_is_lacking_is_named_not_guessed() {
    let untold = RunPatch { length: Some(Told::plain(inches(120))), ..RunPatch::default() };
    let ten = || run(inches(120), End::Corner, End::Corner);
    let rows: Vec<(RunPatch, Vec<Lack>)> = vec![
        (RunPatch::default(), vec![Lack::Length, Lack::From, Lack::To]),
        (RunPatch { from: Some(End::House), to: Some(End::Corner), ..RunPatch::default() }, vec![Lack::Length]),
        (gate(ten(), GateAt::From, None), vec![Lack::GateWidth]),
        (gate(ten(), GateAt::Middle, None), vec![Lack::GateWidth]),
        (run(inches(6), End::Corner, End::Corner), vec![Lack::Room]),
        (run(inches(7), End::Corner, End::Corner), vec![Lack::Room]),
        (stairs(ten(), inches(48), StairAt::FromLeft(inches(5))), vec![Lack::Room]),
        (
            gate(stairs(ten(), inches(48), StairAt::FromLeft(inches(20))), GateAt::From, Some(inches(36))),
            vec![Lack::GatePlace],
        ),
        (gate(stairs(ten(), inches(48), StairAt::Middle), GateAt::Middle, Some(inches(36))), vec![Lack::GatePlace]),
        // A gate in the middle that lies within stairs at an end is never dropped.
        (
            gate(stairs(ten(), inches(72), StairAt::FromRight(inches(0))), GateAt::Middle, Some(inches(24))),
            vec![Lack::GatePlace],
        ),
        (bays(gate(ten(), GateAt::Middle, Some(inches(36))), 3), vec![Lack::BaySplit]),
        (bays(gate(ten(), GateAt::Middle, Some(inches(36))), 1), vec![Lack::BaySplit]),
        (bays(ten(), 40), vec![Lack::Room]),
    ];
    for (patch, want) in rows {
        assert_eq!(laid(&[], patch).runs[0].result.as_ref().err(), Some(&want));
    }
    // Untold ends are laid out as end posts, and it says so.
    let layout = laid(&[], untold);
    let p = placed(&layout);
    assert_eq!(p.still, [Lack::From, Lack::To]);
    assert_eq!(p.posts[0].kind.name(), "end post");
    let beyond = laid(&[], gate(run(inches(120), End::Corner, End::StairHead), GateAt::To, None));
    assert_eq!(placed(&beyond).still, [Lack::GateBeyond]);
}

#[test]
fn told_limits_and_counts_govern_the_split() {
    let sixteen = || run(inches(188), End::Corner, End::Corner);
    let clear = Setting::ClearMax(inches(60));
    let rows: Vec<(Vec<Setting>, RunPatch, usize, Length)> = vec![
        (vec![], sixteen(), 3, inches(58)),
        (vec![clear], sixteen(), 3, inches(58)),
        (vec![clear, Setting::Post(PostRole::All, BIG)], sixteen(), 3, frac(166, 3)),
        // A clear limit longer than the published spacing is used as told.
        (vec![Setting::ClearMax(inches(90))], sixteen(), 2, frac(355, 4)),
        (vec![Setting::CentreMax(inches(48))], sixteen(), 4, frac(341, 8)),
        // Both told: neither swallows the other.
        (vec![Setting::CentreMax(inches(96)), clear], sixteen(), 3, inches(58)),
        (vec![Setting::CentreMax(inches(48)), clear], sixteen(), 4, frac(341, 8)),
        (vec![], bays(sixteen(), 5), 5, frac(167, 5)),
    ];
    for (settings, patch, count, each) in rows {
        let layout = laid(&settings, patch);
        assert_eq!(clears(placed(&layout)), vec![each; count], "{settings:?}");
    }
}

#[test]
fn a_bay_that_only_rounding_breaks_gets_one_more() {
    // 59 1/20 clear is off the tape: two bays of exactly that read 59 1/16 somewhere.
    let most = frac(1181, 20);
    let length = most * 2 + half(21);
    let layout = laid(&[Setting::ClearMax(most)], run(length, End::Corner, End::Corner));
    let p = placed(&layout);
    assert_eq!((p.bays.len(), p.rounded_up), (3, true));
    let on_tape = laid(&[Setting::ClearMax(inches(59))], run(inches(118) + half(21), End::Corner, End::Corner));
    assert_eq!((placed(&on_tape).bays.len(), placed(&on_tape).rounded_up), (2, false));
}

#[test]
fn a_told_count_is_shared_so_that_the_longest_bay_is_shortest() {
    let patch = stairs(run(inches(252), End::Corner, End::Corner), inches(48), StairAt::FromLeft(inches(60)));
    let layout = laid(&[], bays(patch, 4));
    let kinds: Vec<_> = placed(&layout).bays.iter().map(|b| b.kind).collect();
    use BayKind::{Rail, Stairs};
    assert_eq!(kinds, [Rail, Stairs, Rail, Rail, Rail]);
}

#[test]
fn an_empty_job_lays_out_to_nothing() {
    let layout = railhand::layout::lay_out(&Job::default());
    assert!(layout.runs.is_empty());
    assert!(values(&layout).posts.is_empty());
}
