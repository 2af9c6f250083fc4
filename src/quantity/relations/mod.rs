//! The relations, by what they are about.

mod foot;
mod gate;
mod guard;
mod infill;
mod layout;
mod order;
mod stairs;
mod whole;
mod wood;

use super::relation::Relation;

/// Every relation that needs no engine.
pub fn relations() -> impl Iterator<Item = &'static Relation> {
    let all: [&'static [Relation]; 8] = [
        guard::RELATIONS,
        layout::RELATIONS,
        foot::RELATIONS,
        infill::RELATIONS,
        stairs::RELATIONS,
        gate::RELATIONS,
        wood::RELATIONS,
        order::RELATIONS,
    ];
    all.into_iter().flatten()
}
