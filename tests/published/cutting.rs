//! Cut plans against optima a general-purpose solver proved: `cutting/guards.json` (guard work,
//! two models that agree) and `cutting/generated.json` (made and proved by `cutting/make.py`).
//! The optimum is checked, never the plan: other plans of the same length exist.

use railhand::measure::{Length, decimal};
use railhand::takeoff::cutplan::{CannotCut, CutOrder, CutPlan, Effort, Proved, Stick, Supply, Wanted, plan};
use rust_decimal::Decimal;
use serde_json::Value;

/// Work enough to prove every instance here.
const PLENTY: u64 = 40_000_000;

fn sixty_fourths(v: &Value) -> Length {
    Length::new(v.as_i64().expect("whole 64ths").into(), 64).expect("a stick's length")
}

fn order(v: &Value) -> CutOrder {
    let list = |name: &str| v[name].as_array().expect("a list").clone();
    let count = |v: &Value| u32::try_from(v.as_u64().expect("a count")).expect("few");
    let supply = |s: &Value| match (s["on_hand"].is_null(), s["cents"].as_i64()) {
        (false, _) => Supply::OnHand(count(&s["on_hand"])),
        (true, cents) => Supply::Yard(cents.map(|c| Decimal::new(c, 2))),
    };
    CutOrder {
        wanted: list("pieces")
            .iter()
            .map(|p| Wanted { length: sixty_fourths(&p["length"]), count: count(&p["count"]) })
            .collect(),
        sticks: list("stock")
            .iter()
            .map(|s| Stick { length: sixty_fourths(&s["length"]), supply: supply(s) })
            .collect(),
        kerf: sixty_fourths(&v["kerf"]),
    }
}

/// What a plan buys, in the unit of the file.
fn bought(plan: &CutPlan, unit: &str) -> String {
    match unit {
        "cents" => (plan.price.expect("every stick has a price") * Decimal::ONE_HUNDRED).normalize().to_string(),
        _ => decimal(plan.bought.q() * num_rational::Ratio::from_integer(64)).0,
    }
}

fn check(text: &str) -> usize {
    let file: Value = serde_json::from_str(text).expect("the file is JSON");
    let instances = file["instances"].as_array().expect("a list");
    for v in instances {
        let order = order(v);
        let plan = plan(&order, &mut Effort(PLENTY)).expect("it can be cut");
        assert_eq!(bought(&plan, v["unit"].as_str().unwrap_or("")), v["least"].to_string(), "{}", v["id"]);
        assert_eq!(plan.proved, Proved::Least, "{}", v["id"]);
        if let Some(sticks) = v["sticks"].as_u64() {
            assert_eq!(u64::from(plan.bought_count()), sticks, "{}", v["id"]);
        }
    }
    instances.len()
}

#[test]
fn guard_work() {
    assert_eq!(check(include_str!("cutting/guards.json")), 6);
}

#[test]
fn generated_problems() {
    assert_eq!(check(include_str!("cutting/generated.json")), 48);
}

fn inches(num: i128, den: i128) -> Length {
    Length::new(num, den).expect("a small fraction")
}

fn of_eight_feet(piece: Length, count: u32, kerf: Length) -> CutOrder {
    let stick = Stick { length: inches(96, 1), supply: Supply::Yard(None) };
    CutOrder { wanted: vec![Wanted { length: piece, count }], sticks: vec![stick], kerf }
}

/// Worked check W21: 96 in. with a 1/8 kerf gives two of 32 (three need 96 1/4), three of
/// 31 7/8 (95 7/8 used), and the longest that goes three times is 31.9167.
#[test]
fn pieces_to_a_stick() {
    let rows =
        [(inches(32, 1), 2, inches(255, 8)), (inches(255, 8), 3, inches(1, 8)), (inches(383, 12), 3, Length::ZERO)];
    for (piece, per_stick, left) in rows {
        let plan = plan(&of_eight_feet(piece, per_stick, inches(1, 8)), &mut Effort(PLENTY)).expect("it can be cut");
        assert_eq!((plan.bought_count(), plan.sticks[0].left), (1, left));
        let more =
            railhand::takeoff::cutplan::plan(&of_eight_feet(piece, per_stick + 1, inches(1, 8)), &mut Effort(PLENTY));
        assert_eq!(more.expect("it can be cut").bought_count(), 2);
    }
}

/// Bad input: the fact that is off is named.
#[test]
fn what_cannot_be_cut() {
    let fine = of_eight_feet(inches(32, 1), 4, inches(1, 8));
    let fault = |order: &CutOrder| plan(order, &mut Effort(PLENTY)).expect_err("it cannot be cut");
    let long = CutOrder { wanted: vec![Wanted { length: inches(97, 1), count: 1 }], ..fine.clone() };
    assert_eq!(fault(&long), CannotCut::TooLong { piece: inches(97, 1), longest: inches(96, 1) });
    assert_eq!(fault(&CutOrder { sticks: Vec::new(), ..fine.clone() }), CannotCut::NoStock);
    assert_eq!(fault(&CutOrder { kerf: inches(96, 1), ..fine.clone() }), CannotCut::Kerf(inches(96, 1)));
    assert_eq!(fault(&CutOrder { wanted: Vec::new(), ..fine.clone() }), CannotCut::NothingWanted);
    let on_hand = vec![Stick { length: inches(96, 1), supply: Supply::OnHand(1) }];
    assert_eq!(fault(&CutOrder { sticks: on_hand, ..fine }), CannotCut::NotEnough);
}
