//! How long cut plans and whole take-offs take: `cargo bench --bench takeoff`.

use divan::{Bencher, black_box};
use railhand::job::{Basis, End, Fact, Job, Member, Order, RunId, RunPatch, Told};
use railhand::layout::lay_out;
use railhand::measure::{Length, Lumber};
use railhand::takeoff::cutplan::{CutOrder, Effort, Stick, Supply, Wanted, plan};
use railhand::takeoff::{buy, longest, parts};

fn main() {
    divan::main();
}

/// `pieces` rails of 24 different lengths from 20 to 95 in., from sticks of 8, 10, 12 and 16 ft.
fn order(pieces: u32) -> CutOrder {
    let kinds = pieces.min(24);
    let length = |k: u32| Length::sixteenths(320 + i64::from(k * 7919 % 1200));
    let count = |k: u32| pieces / kinds + u32::from(k < pieces % kinds);
    let yard = |feet: i64| Stick { length: Length::inches(feet * 12), supply: Supply::Yard(None) };
    CutOrder {
        wanted: (0..kinds).map(|k| Wanted { length: length(k), count: count(k) }).collect(),
        sticks: [8, 10, 12, 16].map(yard).into(),
        kerf: Length::sixteenths(2),
    }
}

#[divan::bench(args = [10, 100, 500])]
fn cut_plan(bencher: Bencher, pieces: u32) {
    let order = order(pieces);
    bencher.bench(|| plan(black_box(&order), &mut Effort::AT_THE_PROMPT.clone()));
}

/// Runs of 20 ft corner to corner, five posts each, until there are so many posts.
fn job(posts: u32) -> Job {
    let run = |n: u32| {
        let length = Told::plain(Length::inches(i64::from(200 + n % 40)));
        let (from, to) = (Some(End::Corner), Some(End::Corner));
        let patch = RunPatch {
            length: Some(length),
            basis: Some(Basis::Overall),
            from,
            to,
            bays: Some(Some(4)),
            ..RunPatch::default()
        };
        Fact::Run(RunId(n), patch)
    };
    let cap = Fact::Order(Order::Rail(Member::Cap, Some(Lumber::by(2, 6))));
    let facts: Vec<Fact> = (1..=posts / 5).map(run).chain([cap]).collect();
    Job::default().with_all(&facts).expect("a possible job")
}

#[divan::bench(args = [10, 1000])]
fn whole_job(bencher: Bencher, posts: u32) {
    let job = job(posts);
    bencher.bench(|| {
        let layout = lay_out(black_box(&job));
        let parts = parts(&job, &layout, |size| longest(&job, size)).expect("every bay can be filled");
        buy(&job, &parts, &mut Effort::AT_THE_PROMPT.clone())
    });
}
