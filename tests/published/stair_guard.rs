//! Stair guards against figures worked outside the program, and what holds for all of them.

use proptest::prelude::*;
use railhand::figure::Fig;
use railhand::job::Settings;
use railhand::limits;
use railhand::measure::{Length, Tape, decimal};
use railhand::stairs::Rake;
use railhand::stairs::guard::{Laid, Most, RakeGuard, Site, Stands, lay_out};
use railhand::stairs::meet::{Choice, meet};

fn fig(sixteenths: i64) -> Fig {
    Fig::told(Length::sixteenths(sixteenths), "in the check")
}

/// Riser and tread in sixteenths, nosings, height, how far the posts stand behind their nosings.
fn site(rise: i64, tread: i64, nosings: u16, height: i64, top_back: i64, foot_back: i64) -> Site {
    Site {
        rake: Rake::new(fig(rise), fig(tread)).expect("a slope"),
        nosings,
        height: fig(height * 16),
        top_back: fig(top_back),
        foot_back: fig(foot_back),
        widths: [fig(56), fig(56), fig(56)],
        most: Most { centre: Some(Fig::limit(&limits::POST_SPACING)), clear: None },
    }
}

fn guard(site: &Site, laid: Laid) -> RakeGuard {
    lay_out(site, laid, Tape::SIXTEENTHS).expect("a guard")
}

/// W11: rail 36 above the nosing line, 7 3/4 on 10, a post 3 behind a nosing: 38.325 above
/// that tread.
#[test]
fn w11_a_posts_height_above_its_tread() {
    let g = guard(&site(124, 160, 8, 36, 0, 48), Laid::Slope);
    let newel = g.posts.last().expect("a newel");
    assert_eq!((newel.stands, decimal(newel.above.as_q()).0.as_str()), (Stands::Tread(8), "38.325"));
    // From the landing it is the bottom riser more.
    assert_eq!(decimal(g.newel_above_landing.as_q()).0, "46.075");
}

/// By hand: 8 treads of 10 between the posts, 80 on the level, 101.21 along the slope at
/// 7 3/4 on 10. Along the slope 72 asks for two bays, on the level too. 7 treads: 70 on the
/// level is one bay, 88.56 along the slope two: saying which changes the posts.
#[test]
fn the_limit_on_the_slope_or_on_the_level() {
    let bays = |nosings, laid| guard(&site(124, 160, nosings, 36, 0, 0), laid).bays.len();
    assert_eq!((bays(8, Laid::Slope), bays(8, Laid::Level)), (2, 2));
    assert_eq!((bays(7, Laid::Slope), bays(7, Laid::Level)), (2, 1));
}

/// By hand: two bays of 80 level: mid post at 40, on the fourth nosing; each bay 40 - 3 1/2
/// = 36 1/2 clear; 46.1783 clear along the slope.
#[test]
fn a_mid_post_by_hand() {
    let g = guard(&site(124, 160, 8, 36, 0, 0), Laid::Slope);
    let at: Vec<String> = g.posts.iter().map(|p| decimal(p.at.as_q()).0).collect();
    assert_eq!(at, ["0", "40", "80"]);
    let stands: Vec<Stands> = g.posts.iter().map(|p| p.stands).collect();
    assert_eq!(stands, [Stands::Deck, Stands::Tread(4), Stands::Tread(8)]);
    assert_eq!(decimal(g.bays[0].clear.as_q()).0, "36.5");
    assert!(decimal(g.bays[0].clear_along.as_q()).0.starts_with("46.178"));
    assert!(g.posts.iter().all(|p| decimal(p.above.as_q()).0 == "36"));
}

/// A newel past the lowest nosing stands on the landing, a riser further down: 4 past it at
/// 0.775 is 3.1 down, 36 - 3.1 + 7.75 = 40.65 (by hand).
#[test]
fn a_newel_on_the_landing() {
    let g = guard(&site(124, 160, 4, 36, 0, -64), Laid::Slope);
    let newel = g.posts.last().expect("a newel");
    assert_eq!((newel.stands, decimal(newel.above.as_q()).0.as_str()), (Stands::Landing, "40.65"));
    assert_eq!(newel.above.as_q(), g.newel_above_landing.as_q());
}

/// Plane geometry by hand: with a 4x4 centred on the nosing the rake rail has dropped 1 3/4 x
/// 0.775 = 1.35625 at the post's face. Level 36 wants the rake at 37.35625, within 34 to 38;
/// level 42 wants 43.36, past 38 where the top is the handrail too; with the face on the
/// nosing nothing is dropped.
#[test]
fn level_and_rake_rails_at_the_top_post() {
    let at = |back, level: i64, handrail| {
        meet(&site(124, 160, 8, 36, back, 0), &fig(level * 16), handrail, &Settings::default())
    };
    let m = at(0, 36, true);
    assert_eq!((decimal(m.drop.as_q()).0.as_str(), decimal(m.step.as_q()).0.as_str()), ("1.35625", "1.35625"));
    let Choice::Raise(to) = m.choice else { panic!("{:?}", m.choice) };
    assert_eq!(decimal(to.as_q()).0, "37.35625");
    assert_eq!(at(0, 42, true).choice, Choice::Step);
    assert!(matches!(at(0, 42, false).choice, Choice::Raise(_)));
    assert_eq!(at(28, 36, true).choice, Choice::Meets);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// Plumb and square-to-slope, level and along-the-slope: each undoes the other, to within what
    /// nine carried places leave.
    #[test]
    fn conversions_are_inverse(rise in 64_i64..140, tread in 128_i64..200, l in 1_i64..4000) {
        let rake = Rake::new(fig(rise), fig(tread)).expect("a slope");
        let near = |a: &Fig| {
            let off = a.as_q() - fig(l).as_q();
            prop_assert!(off.numer().abs() * 100_000_000 <= *off.denom(), "{off}");
            Ok(())
        };
        near(&rake.plumb(&rake.square(&fig(l))))?;
        near(&rake.square(&rake.plumb(&fig(l))))?;
        near(&rake.level(&rake.along(&fig(l))))?;
        near(&rake.along(&rake.level(&fig(l))))?;
    }

    /// The bays along the slope sum to the slope, those on the level to the span; and no bay
    /// passes the limit, which one bay fewer would.
    #[test]
    fn bays_sum_to_the_slope(rise in 64_i64..140, tread in 128_i64..200, nosings in 1_u16..20, back in 0_i64..64, foot in -64_i64..64) {
        let site = site(rise, tread, nosings, 36, back, foot);
        let Some(g) = lay_out(&site, Laid::Slope, Tape::SIXTEENTHS) else { return Ok(()) };
        let sum = |of: fn(&railhand::stairs::RakeBay) -> &Fig| g.bays.iter().map(|b| of(b).as_q()).sum::<railhand::measure::Q>();
        prop_assert_eq!(sum(|b| &b.centre), g.span.as_q());
        prop_assert_eq!(sum(|b| &b.centre_along), g.slope.as_q());
        let most = limits::POST_SPACING.length().q();
        prop_assert!(g.bays.iter().all(|b| b.centre_along.as_q() <= most));
        let n = g.bays.len() as i128;
        let fewer_fits = n > 1 && g.slope.as_q() < (most - railhand::measure::Q::new(1, 16)) * (n - 1);
        prop_assert!(!fewer_fits, "{} bays of {}", n, g.slope.as_q());
    }

    /// Every post's rail top lies on one line a told height above the nosing line.
    #[test]
    fn rail_tops_lie_on_one_line(rise in 64_i64..140, tread in 128_i64..200, nosings in 1_u16..20, back in 0_i64..64, foot in -64_i64..64) {
        let site = site(rise, tread, nosings, 36, back, foot);
        let Some(g) = lay_out(&site, Laid::Slope, Tape::SIXTEENTHS) else { return Ok(()) };
        for p in &g.posts {
            let x = p.at.as_q() - fig(back).as_q();
            let down = match p.stands {
                Stands::Deck => 0,
                Stands::Tread(k) => i64::from(k),
                Stands::Landing => i64::from(nosings) + 1,
            };
            let top = p.above.as_q() - (fig(rise).as_length().expect("a length") * down).q();
            prop_assert_eq!(top, fig(36 * 16).as_q() - x * fig(rise).as_q() / fig(tread).as_q());
        }
    }
}
