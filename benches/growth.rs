//! How work grows with a job: layouts of more and more posts, and job files of more and more lines.
//!
//! `cargo bench --bench growth`

use divan::{Bencher, black_box};
use railhand::job::{Basis, End, Fact, Job, RunId, RunPatch, Told};
use railhand::layout::lay_out;
use railhand::measure::Length;
use railhand::store::{session_of, whole_file};

fn main() {
    divan::main();
}

/// Runs of 20 ft corner to corner, five posts each, until there are so many posts.
fn job(posts: u32) -> Job {
    let run = |n: u32| {
        let (from, to) = (Some(End::Corner), Some(End::Corner));
        let length = Some(Told::plain(Length::inches(i64::from(200 + n % 40))));
        let patch =
            RunPatch { length, basis: Some(Basis::Overall), from, to, bays: Some(Some(4)), ..RunPatch::default() };
        Fact::Run(RunId(n), patch)
    };
    let facts: Vec<Fact> = (1..=posts / 5).map(run).collect();
    Job::default().with_all(&facts).expect("a possible job")
}

#[divan::bench(args = [10, 1_000, 100_000], sample_count = 20)]
fn layout(bencher: Bencher, posts: u32) {
    let job = job(posts);
    bencher.bench(|| lay_out(black_box(&job)));
}

/// A job file of so many told lines: one run, put right again and again.
#[divan::bench(args = [10, 1_000, 10_000], sample_count = 20)]
fn replay(bencher: Bencher, lines: usize) {
    let run = "run 1: 12'-0\" out to out, from house, to corner".to_owned();
    let again = (1..lines).map(|n| format!("run 1: {}'-0\" out to out", 10 + n % 30));
    let file = whole_file(&std::iter::once(run).chain(again).collect::<Vec<_>>());
    bencher.bench(|| session_of(black_box(file.as_bytes())).map(|s| s.job().runs.len()));
}
