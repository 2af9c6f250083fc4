//! The limits of stairs, handrails and pools against a sheet of the published figures: rows S1 to S29 (IRC
//! R311.7 of 2018 and 2021; R318.7 and R320 of 2024) and P1 to P8 (CPSC guideline, ISPSC 305). Each row says
//! how far the sheet trusts it.

use railhand::limits::{Limit, Trust, find};
use railhand::measure::Length;

/// Row, limit, its figure in sixteenths of an inch, what its source must name.
const LENGTHS: &[(&str, &str, i64, &str)] = &[
    ("S1", "riser-most", 124, "R311.7.5.1"),
    ("S2", "tread-least", 160, "R311.7.5.2"),
    ("S3", "stair-spread", 6, "R311.7.5.1"),
    ("S4 least", "nosing-least", 12, "R311.7.5.3"),
    ("S4 most", "nosing-most", 20, "R311.7.5.3"),
    ("S5", "nosing-free", 176, "R311.7.5.3"),
    ("S6", "nosing-curve", 9, "R311.7.5.3"),
    ("S7", "open-riser", 64, "R318.7.5.1"),
    ("S9", "stair-width", 576, "R311.7.1"),
    ("S10 one rail", "stair-width-one-rail", 504, "R311.7.1"),
    ("S10 two rails", "stair-width-two-rails", 432, "R311.7.1"),
    ("S11", "stair-headroom", 1280, "R311.7.2"),
    ("S12", "flight-rise", 2416, "R311.7.3"),
    ("S13", "landing", 576, "R311.7.6"),
    ("S21 least", "handrail-low", 544, "R311.7.8.1"),
    ("S21 most", "handrail-high", 608, "R311.7.8.1"),
    ("S23", "handrail-projection", 72, "R311.7.8.2"),
    ("S24", "handrail-space", 24, "R311.7.8.3"),
    ("S25", "handrail-ends", 4, "R320.5"),
    ("S28 least", "grip-round-least", 20, "R311.7.8.5"),
    ("S28 most", "grip-round-most", 32, "R311.7.8.5"),
    ("S29 around, least", "grip-around-least", 64, "R311.7.8.5"),
    ("S29 around, most", "grip-around-most", 100, "R311.7.8.5"),
    ("S29 across", "grip-across-most", 36, "R311.7.8.5"),
    ("P1", "pool-top", 768, "305.2.1"),
    ("P2", "pool-gap-ground", 32, "305.2.1"),
    ("P3", "pool-gap-deck", 64, ""),
    ("P5 apart", "pool-rails-apart", 720, ""),
    ("P5 gap", "pool-tight-gap", 28, ""),
    ("P8", "pool-latch", 864, "305.3.3"),
];

fn limit(id: &str) -> &'static Limit {
    find(id).unwrap_or_else(|| panic!("no limit {id}"))
}

#[test]
fn every_length_is_as_published() {
    for (row, id, sixteenths, source) in LENGTHS {
        let l = limit(id);
        assert_eq!(l.length(), Length::sixteenths(*sixteenths), "{row} {id}");
        assert!(l.source.contains(source), "{row} {id}: {}", l.source);
        assert_eq!(l.trust, Trust::Checked, "{row} {id}");
    }
}

/// S8 30 degrees, S19 1 in 48, S20 four risers; P7 has no figure.
#[test]
fn every_other_figure_is_as_published() {
    let rows = [("riser-lean", 30), ("landing-fall", 48), ("handrail-risers", 4)];
    for (id, value) in rows {
        assert_eq!((limit(id).value, limit(id).trust), (value, Trust::Checked), "{id}");
    }
    assert!(limit("pool-gate").source.contains("305.3"), "{}", limit("pool-gate").source);
}
