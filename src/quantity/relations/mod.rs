//! The relations, by what they are about.

mod bought;
mod foot;
mod gate;
mod guard;
mod infill;
mod layout;
mod money;
mod needed;
mod order;
mod shape;
mod stairs;
mod whole;
mod wood;

use super::relation::Relation;

/// Every relation that needs no engine.
pub fn relations() -> impl Iterator<Item = &'static Relation> {
    let all: [&'static [Relation]; 12] = [
        guard::RELATIONS,
        layout::RELATIONS,
        foot::RELATIONS,
        infill::RELATIONS,
        stairs::RELATIONS,
        gate::RELATIONS,
        wood::RELATIONS,
        order::RELATIONS,
        bought::RELATIONS,
        money::RELATIONS,
        shape::RELATIONS,
        needed::RELATIONS,
    ];
    all.into_iter().flatten()
}
