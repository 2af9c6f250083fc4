//! The wording of a layout's answer and the look of its drawing.

mod common;

use common::{basis, bays, gate, inches, job, run, stairs, text, texts};
use pretty_assertions::assert_eq;
use railhand::figure::Value;
use railhand::job::{Basis, End, GateAt, Job, RunId, RunPatch, StairAt};
use railhand::layout::{Focus, answer, draw, lay_out, values};
use railhand::reply::Role;
use railhand::rules::report;

fn said(job: &Job, focus: Focus) -> String {
    texts(&answer(&lay_out(job), None, focus))
}

fn drawn(job: &Job, width: usize) -> String {
    let layout = lay_out(job);
    draw(&layout.runs[0], width, layout.tape).join("\n")
}

fn ten_feet() -> Job {
    job(&[], gate(run(inches(120), End::Corner, End::StairHead), GateAt::To, None))
}

#[test]
fn the_answer_comes_first_then_what_it_rests_on() {
    insta::assert_snapshot!(said(&ten_feet(), Focus::Whole), @r#"
    3 posts, 2 bays of 4'-6 3/4" clear
    10'-0" taken out to out: from the outside face of the corner post to the outside face of the stair head post.
    Marks, tape hooked on the outside face of the corner post: centre of post (near face)
      1 3/4"  (0")  corner post
      5'-0"  (4'-10 1/4")  line post
      9'-10 1/4"  (9'-8 1/2")  stair head post
    2 bays of 4'-6 3/4" clear, 4'-10 1/4" on centre.
    Still to tell: how wide the gate is, for its other jamb.
    Limit: no more than 6'-0" on centre: AWC DCA 6 (2012/2015), guard pages (from memory, not checked); not in the IRC; local rules decide.
    "#);
}

#[test]
fn each_focus_answers_its_own_question_first() {
    let rows = [
        (Focus::Posts, "3 posts"),
        (Focus::Bays, "2 bays of 4'-6 3/4\" clear, 4'-10 1/4\" on centre"),
        (
            Focus::RunLength,
            "10'-0\" out to out, from the outside face of the corner post to the outside face of the stair head post",
        ),
    ];
    for (focus, first) in rows {
        assert_eq!(said(&ten_feet(), focus).lines().next(), Some(first), "{focus:?}");
    }
}

#[test]
fn what_is_lacking_is_said_and_told_apart_from_what_does_not_fit() {
    insta::assert_snapshot!(said(&job(&[], RunPatch::default()), Focus::Whole), @r"
    Posts cannot be placed yet.
    Still to tell: how long the run is; what the run starts at; what the run ends at.
    ");
    insta::assert_snapshot!(said(&job(&[], run(inches(7), End::Corner, End::Corner)), Focus::Whole), @r"
    Posts cannot be placed yet.
    It does not work out: the posts, bays and openings told do not fit in the run.
    ");
    let ends = RunPatch { from: None, to: None, ..run(inches(60), End::Corner, End::Corner) };
    let text = said(&job(&[], ends), Focus::Whole);
    let taken =
        "Still to tell: what the run starts at (an end post is taken); what the run ends at (an end post is taken).";
    assert!(text.contains(taken), "{text}");
}

#[test]
fn a_post_the_tape_hooks_on_gets_no_mark() {
    for told in [Basis::Clear, Basis::Centre] {
        let text = said(&job(&[], basis(run(inches(120), End::Corner, End::Corner), told)), Focus::Posts);
        assert!(text.contains("  tape's start: corner post\n"), "{text}");
        assert!(!text.contains(" -"), "no negative mark is shown: {text}");
    }
}

#[test]
fn runs_are_named_where_there_is_more_than_one() {
    let mut two = ten_feet();
    let mut second = two.runs[0].clone();
    (second.id, second.name) = (RunId(2), Some("front".to_owned()));
    two.runs.push(second);
    let firsts: Vec<String> =
        answer(&lay_out(&two), None, Focus::Whole).iter().filter(|l| l.role == Role::Answer).map(text).collect();
    let counted = "3 posts, 2 bays of 4'-6 3/4\" clear";
    assert_eq!(firsts, [format!("run 1: {counted}"), format!("front: {counted}")]);
    assert_eq!(
        answer(&lay_out(&two), Some(RunId(1)), Focus::Posts).iter().map(text).next().as_deref(),
        Some("3 posts")
    );
    let more = values(&lay_out(&two)).more;
    let posts = more.iter().find(|(name, _)| *name == "posts_count").map(|(_, f)| f.value());
    assert_eq!(posts, Some(Value::Count(6)));
}

/// A bay count told over the limit is laid out, stopped at, and asked about once.
#[test]
fn a_report_ends_with_its_cautions() {
    let nothing_between = job(&[], bays(run(inches(180), End::Corner, End::House), 1));
    let report = report(&nothing_between, Some(RunId(1)), Focus::Whole, 40);
    let cautions: Vec<_> = report.lines.iter().filter(|l| l.role == Role::Caution).map(text).collect();
    insta::assert_snapshot!(cautions.join("\n"), @r#"
    Stop: run 1: a bay of 14'-5" clear, 14'-8 1/2" on centre is over the limit of 6'-0" on centre; the fewest bays that pass: 3. (AWC DCA 6 (2012/2015), guard pages (from memory, not checked))
    Check: run 1: no line post in 14'-5": the rail alone carries the push between its ends. (AWC DCA 6 (2012/2015), guard pages (from memory, not checked))
    Note: run 1: a post against the wall is taken; say bracket at the house if the rail is fixed to the wall instead.
    Your building department decides.
    "#);
    assert_eq!(report.findings.len(), 3);
    assert!(report.lines.iter().any(|l| l.role == Role::Drawing));
}

#[test]
fn a_run_is_drawn_to_scale_at_forty_and_at_eighty_columns() {
    let opened = job(&[], stairs(run(inches(216), End::House, End::Corner), inches(48), StairAt::Middle));
    insta::assert_snapshot!(drawn(&opened, 80), @r#"
    house                                                                    corner
    | #-------------#-------------#                 #-------------#-------------#
        3'-0 3/4"     3'-0 3/4"      stairs 4'-0"      3'-0 3/4"     3'-0 3/4"
    "#);
    insta::assert_snapshot!(drawn(&opened, 40), @r#"
    house                            corner
    |#------#------#       #------#------#
    2 bays of 3'-0 3/4" 2 bays of 3'-0 3/4"
                 stairs 4'-0"
    "#);
}

#[test]
fn a_run_too_long_for_its_width_goes_on_in_a_second_row() {
    let crowded = job(&[], bays(run(inches(400), End::Wall, End::House), 20));
    insta::assert_snapshot!(drawn(&crowded, 40), @r#"
    wall
    |#-#-#-#-#-#-#-#-#-#-#-#-#-#-#-#-#-#-#->
               20 bays of 1'-4 5/16"
    house
    #-#|
    "#);
}
