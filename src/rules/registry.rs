//! The table of rules.

use super::{Rule, bays, deck, examples, framing, guard, notch, rails, runs, stairs, strength};
use crate::limits;
use crate::reply::Level::{Check, Note, Stop};

macro_rules! rules {
    ($($level:ident $id:literal $title:literal $says:literal $limit:ident $check:path, $trips:ident / $passes:ident;)*) => {
        &[$(Rule {
            id: $id,
            title: $title,
            says: $says,
            limit: &limits::$limit,
            level: $level,
            check: $check,
            trips: examples::$trips,
            passes: examples::$passes,
        }),*]
    };
}

/// Every rule, the gravest first.
pub static RULES: &[Rule] = rules! {
    Stop "post-spacing-over-published" "Posts too far apart"
        "The bay count or the limit told leaves posts further apart than the published spacing."
        POST_SPACING bays::over_published, two_bays_in_15_ft / three_bays_in_15_ft;
    Stop "post-spacing-over-told" "Posts further apart than told"
        "The bay count told passes a limit told for the same job, clear or on centre."
        TOLD_SPACING bays::over_told, two_bays_over_a_told_limit / three_bays_under_a_told_limit;
    Stop "guard-too-low" "Guard too low"
        "A required guard is at least 36 in. high; some places ask for 42."
        GUARD_HEIGHT guard::too_low, height_35 / height_36;
    Stop "gap-limit-too-wide" "Gaps let the ball through"
        "Openings of a level guard must stop a 4 in. ball."
        LEVEL_GAP guard::gap_too_wide, gaps_to_5 / gaps_under_4;
    Stop "gap-under-too-wide" "Gap under the bottom rail lets the ball through"
        "The gap under the bottom rail is an opening like any other; exactly 4 in. fails."
        LEVEL_GAP guard::gap_under_too_wide, gap_under_4 / gap_under_3;
    Stop "balusters-hang-free" "Balusters between the rails, and no bottom rail"
        "Balusters between the rails stand on the bottom rail; without one they hang, and a ball passes under them."
        LEVEL_GAP rails::balusters_hang, between_rails_and_no_bottom / on_faces_and_no_bottom;
    Stop "notch-in-4x4" "Notched 4x4"
        "4x4 guard posts are not notched where they connect to the deck's framing."
        NOTCHED_POST notch::in_4x4, notched_4x4 / notched_6x6;
    Stop "notch-takes-half" "Notch of half the post or more"
        "What is left of a post's foot carries the whole push on the guard."
        NOTCH_HALF notch::takes_half, half_notched_4x4 / notched_6x6;
    Stop "leg-bending-far-over" "Notched leg far over what its wood is allowed"
        "200 lb at the guard's top bends what a notch leaves of the post past what its wood is allowed for any load time; checked where the wood was told."
        FAR_OVER strength::leg_bends_far, pine_4x4_notched_half / pine_4x4_notched_half_inch;
    Stop "hold-down-far-over" "Upper bolt pulled far past the published hold-down"
        "Bolts close together in a shallow rim pull the upper one over 1.6 times what the published hold-down is good for."
        HOLD_DOWN strength::pull_far_over, bolted_in_a_2x6 / bolted_at_42;
    Stop "corner-gap-too-wide" "Gap across a corner of two posts lets the ball through"
        "The gap between the two posts of a corner is an opening like any other; exactly 4 in. fails."
        LEVEL_GAP deck::corner_gap, corner_held_back_3 / corner_held_back_2_and_a_half;
    Stop "stair-opening-narrow" "Stairs too narrow between the posts"
        "A stair is at least 36 in. wide, and posts that hang into a recess narrow it."
        STAIR_WIDTH deck::stairs_narrow, recess_36 / recess_48;
    Stop "riser-too-high" "Riser too high"
        "A riser is no more than 7 3/4 in."
        RISER_MOST stairs::riser_too_high, risers_of_8 / risers_of_7_and_a_half;
    Stop "tread-too-shallow" "Tread too shallow"
        "A tread is at least 10 in. deep."
        TREAD_LEAST stairs::tread_too_shallow, treads_of_9 / risers_of_7_and_a_half;
    Stop "stair-rail-too-low" "Stair rail too low"
        "A guard on the open side of a stair is at least 34 in. plumb above the line of the nosings."
        STAIR_GUARD_LOW stairs::rail_too_low, stair_rail_33 / stair_rail_36;
    Stop "landing-short" "Landing too short"
        "There is a landing at the foot of a flight, 36 in. deep in a straight run."
        LANDING stairs::landing_short, landing_of_30 / landing_of_36;
    Stop "open-risers" "Open risers let the ball through"
        "An open riser more than 30 in. up must stop a 4 in. ball."
        OPEN_RISER stairs::open_risers, open_risers_of_4 / open_risers_of_3;
    Stop "pool-guard-low" "Guard too low at a pool"
        "A pool barrier's top is at least 48 in. up."
        POOL_TOP stairs::pool_guard_low, pool_at_42 / pool_at_48;
    Stop "pool-gate-open" "Gate at a pool that does not close by itself"
        "A gate in a pool barrier closes and latches by itself."
        POOL_GATE stairs::pool_gate_open, pool_gate_left_open / pool_gate_closing;
    Check "pool-latch-low" "Latch of a pool gate in reach"
        "A pool gate's latch let go from under 54 in. up stands on the pool side, shielded."
        POOL_LATCH stairs::pool_latch_low, pool_latch_at_48 / pool_latch_at_54;
    Check "open-risers-untold" "Open risers, and not how open"
        "An open riser more than 30 in. up must stop a 4 in. ball."
        OPEN_RISER stairs::open_risers_untold, open_risers_high / open_risers_low;
    Check "pool-gaps" "Gap limit told too wide for a pool"
        "Where a pool barrier's rails are under 45 in. apart, its gaps are no more than 1 3/4 in."
        POOL_TIGHT_GAP stairs::pool_gaps, pool_with_wide_gaps / pool_with_tight_gaps;
    Check "leaf-too-wide" "Leaf wide for one"
        "A leaf over 4 ft is heavy and sags."
        GATE_LEAF stairs::leaf_too_wide, leaf_of_50 / leaf_of_40;
    Check "flight-too-high" "Flight without a landing"
        "One flight rises no more than 12 ft 7 in."
        FLIGHT_RISE stairs::flight_too_high, flight_of_24 / risers_of_7_and_a_half;
    Check "nosing-out-of-range" "Nosing out of its range"
        "A nosing projects 3/4 to 1 1/4 in. where the treads are under 11 in."
        NOSING_LEAST stairs::nosing_off, nosing_of_half / nosing_of_1;
    Check "handrail-past-recess" "Handrail past the mouth of recessed stairs"
        "A handrail runs unbroken to the lowest nosing, past the mouth of stairs let in less deep than they come out."
        HANDRAIL_ENDS stairs::handrail_past_mouth, recess_shorter_than_its_flight / recess_36;
    Check "gate-swings-out" "Gate that swings out"
        "A gate at a stair head swings over the deck, away from the stairs."
        GATE_SWING stairs::gate_swings_out, gate_out / gate_in;
    Check "outline-open" "Sides that do not come home"
        "A deck's sides, walked from the house and home, come back to the house."
        OUTLINE_CLOSES deck::outline_open, foot_short_of_home / home_again;
    Check "side-told-off-edge" "Side of the deck not told on its edge"
        "A side of the outline is measured along the decking's edge, corner to corner."
        EDGE_BASIS deck::side_off_edge, side_out_to_out / home_again;
    Check "corner-post-in-stairs" "Corner post in the way of the stairs"
        "Stairs from the very corner of the deck lose what the next side's corner post takes of them."
        STAIR_WIDTH deck::corner_post_in_stairs, stairs_from_the_corner / home_again;
    Check "recessed-gate-jambs" "Gate on the weakest posts"
        "Posts at the head of recessed stairs, notched over the edge, keep one quarter of their foot."
        RECESSED_HEAD deck::recessed_jambs, gate_at_a_recessed_head / recess_48;
    Check "post-misses-joist" "Post with no joist beside it"
        "On a rim across the joists a post stands beside a joist, or on blocking."
        BLOCKING framing::missed, joists_from_15_and_a_quarter / joists_beside_the_posts;
    Check "rim-along-joists" "Rim along the joists"
        "On a rim along the joists every post wants blocking back to the joists."
        BLOCKING framing::rim_along, joists_along_the_house / joists_beside_the_posts;
    Check "post-spacing-told-wide" "Told limit wider than the published one"
        "The published spacing still stands where a wider limit was told."
        POST_SPACING bays::told_wider_than_published, eight_ft_told_but_not_built / eight_ft_on_centre_built;
    Check "line-posts-left-out" "Line posts left out"
        "With nothing between its ends, the rail alone carries the push."
        POST_SPACING bays::line_posts_left_out, nothing_between / nothing_needed_between;
    Check "line-posts-left-out-of-told" "Line posts left out, by a limit told"
        "With nothing between its ends, the rail alone carries the push."
        TOLD_SPACING bays::line_posts_left_out_of_told, one_bay_over_a_told_limit / nothing_between;
    Check "guard-low-not-required" "Low guard where none is required"
        "The height is written for required guards; the load on a guard is not."
        GUARD_HEIGHT guard::low_but_not_required, height_34_over_28 / height_34_over_31;
    Check "bottom-rail-left-out" "No bottom rail"
        "Without a bottom rail the balusters' feet are fixed elsewhere, and what stands open must stop the ball."
        LEVEL_GAP rails::no_bottom_rail, no_bottom_rail_told / bottom_rail_told;
    Check "post-under-4x4" "Post smaller than a 4x4"
        "Wood guard posts are 4x4 or larger."
        POST_SIZE guard::post_too_small, post_2x4 / post_4x4;
    Check "notch-in-larger-post" "Notched post larger than a 4x4"
        "A notch in a larger post is not barred by name; its strength must still be shown."
        NOTCHED_POST notch::in_larger, notched_6x6 / notched_4x4;
    Check "bay-very-short" "Very short bay"
        "A bay under a foot is often two posts where one would do."
        SHORT_BAY bays::very_short, six_inch_bay / foot_long_bay;
    Check "gate-too-wide" "Gate wide for one leaf"
        "A leaf over 4 ft is heavy and sags."
        GATE_LEAF guard::gate_too_wide, gate_5_ft / gate_4_ft;
    Check "gate-over-stairs" "Gate swings out over the stairs"
        "Nobody should have to step back down the stairs to open a gate."
        GATE_SWING guard::gate_over_stairs, gate_out_over_stairs / gate_in_over_deck;
    Check "rail-sag-over-published" "Rail sags over the published figure"
        "Under 200 lb at midspan a guard's rail sags no more than its span over 96; checked of a rail that was told."
        RAIL_SAG strength::rail_sags, flat_rail_over_5_ft_6 / edge_rail_over_5_ft_6;
    Check "post-bending-over-allowed" "Post bends past what its wood is allowed"
        "200 lb at the guard's top bends the post at the deck; checked where the wood and the height were told."
        TOP_LOAD strength::post_bends, pine_4x4_at_42 / pine_4x4_at_36;
    Check "leg-bending-over-allowed" "Notched leg bends past what its wood is allowed"
        "200 lb at the guard's top bends what a notch leaves of the post; checked where the wood was told."
        TOP_LOAD strength::leg_bends, pine_4x4_notched_half_inch / pine_6x6_notched_half_inch;
    Check "hold-down-over-published" "Upper bolt pulled past the published hold-down"
        "The published hold-down is good for 1,800 lb and speaks of guards up to 36 in. high."
        HOLD_DOWN strength::pull_over, bolted_at_42 / bolted_at_36;
    Check "through-bolts-missing" "Posts held without through bolts"
        "A guard post is held by two through bolts with washers."
        POST_BOLTS strength::no_through_bolts, lagged / bolted_at_36;
    Check "bolts-too-thin" "Bolts thinner than the guide's"
        "A guard post's through bolts are 1/2 in. thick."
        BOLT_SIZE strength::bolts_thin, bolts_of_3_8 / bolts_of_1_2;
    Check "posts-on-decking" "Posts on the decking"
        "A guard on the decking is fixed to framing or blocking below it, its load brought into the joists."
        POSTS_ON_DECKING strength::posts_on_decking, mounted_on_decking / mounted_outside;
    Note "guard-required" "Guard required"
        "Over a drop of more than 30 in. a guard is required."
        GUARD_TRIGGER guard::required, grade_31 / grade_30;
    Note "drop-at-trigger" "Drop exactly at the trigger"
        "Exactly 30 in. is not more than 30."
        GUARD_TRIGGER guard::at_the_trigger, grade_30 / grade_31;
    Note "handrail-needed" "Handrail needed"
        "Four risers or more ask for a handrail on at least one side."
        HANDRAIL_RISERS stairs::handrail_needed, four_risers / three_risers;
    Note "stair-rail-over-handrail" "Stair rail too high for a handrail"
        "A handrail's top is 34 to 38 in. above the line of the nosings; the guard above it may be higher."
        HANDRAIL_HIGH stairs::rail_over_handrail, stair_rail_39 / stair_rail_36;
    Note "mount-untold" "Mount taken for granted"
        "With no mount told, posts are taken as notched over the decking's edge, on the edge."
        MOUNT deck::mount_untold, mount_not_said / home_again;
    Note "framing-half-told" "Joists half told"
        "Posts are checked against the joists once their spacing, first place and direction are told."
        BLOCKING framing::half_told, only_the_spacing_told / joists_along_the_house;
    Note "free-end" "End with no post told"
        "A guard that simply stops still gets a post."
        FREE_END runs::free_end, open_end / corner_end;
    Note "house-end-untold" "Post at the wall taken for granted"
        "Where a run dies into a wall it may end on a post or on a bracket."
        HOUSE_POST runs::house_end_untold, house_end / corner_end;
    Note "length-not-exact" "Length told as not exact"
        "A length told as about, strong or shy is laid out as said, and measured before cutting."
        MEASURE_AGAIN runs::length_not_exact, about_10_ft / ten_ft;
};
