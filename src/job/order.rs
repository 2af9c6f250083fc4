//! What is told for the parts, the saw and the yard.

use super::Lie;
use crate::measure::{Length, Lumber};
use rust_decimal::Decimal;

/// A member that runs along a bay.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Member {
    /// The top rail.
    Top,
    /// The bottom rail.
    Bottom,
    /// The cap on the top rail.
    Cap,
}

impl Member {
    /// Every member.
    pub const ALL: [Member; 3] = [Member::Top, Member::Bottom, Member::Cap];
}

/// Where balusters are fixed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BalustersAt {
    /// Between the rails.
    Between,
    /// On the rails' faces.
    Faces,
}

/// What stands against the posts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum StartWith {
    /// A gap.
    Gap,
    /// A baluster.
    Baluster,
}

/// A part whose cut length may be told.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LongPart {
    /// Balusters.
    Baluster,
    /// Posts.
    Post,
}

/// A part of a hundred, told for the whole order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Percent {
    /// Bought on top, for junk.
    Waste,
    /// Tax on the price.
    Tax,
    /// Markup on the price.
    Markup,
}

/// Sticks of one size and length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct StickOf {
    /// The lumber.
    pub size: Lumber,
    /// How long, in whole feet.
    pub feet: u16,
}

/// One fact of the order.
#[derive(Clone, Debug, PartialEq)]
pub enum Order {
    /// What a member is cut from; `None` for no such member.
    Rail(Member, Option<Lumber>),
    /// How a member lies.
    Lay(Member, Lie),
    /// Where balusters are fixed.
    Balusters(BalustersAt),
    /// What stands against the posts.
    StartWith(StartWith),
    /// How long a part is cut.
    Cut(LongPart, Length),
    /// What each end of a rail is cut short for its bracket.
    Bracket(Length),
    /// So many bays of this clear opening, told alone, without a run.
    Bays(u16, Length),
    /// No bays told alone any more.
    NoBays,
    /// The lengths a size is sold in, in whole feet; no size for all of them.
    Sold(Option<Lumber>, Vec<u16>),
    /// So many sticks or offcuts of this length on hand; none to forget them.
    OnHand(Lumber, Length, u16),
    /// What the saw takes.
    Kerf(Length),
    /// A part of a hundred.
    Percent(Percent, Decimal),
    /// Balusters bought beyond those counted.
    Spares(u16),
    /// What one stick costs.
    Price(StickOf, Decimal),
    /// What the work costs.
    Labour(Decimal),
}

/// All that was told for the order. What was not told is `None` or empty.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OrderBook {
    /// See [`Order::Rail`].
    pub rails: Vec<(Member, Option<Lumber>)>,
    /// See [`Order::Lay`].
    pub lays: Vec<(Member, Lie)>,
    /// See [`Order::Balusters`].
    pub balusters: Option<BalustersAt>,
    /// See [`Order::StartWith`].
    pub start: Option<StartWith>,
    /// See [`Order::Cut`].
    pub cuts: Vec<(LongPart, Length)>,
    /// See [`Order::Bracket`].
    pub bracket: Option<Length>,
    /// See [`Order::Bays`].
    pub bays: Vec<(u16, Length)>,
    /// See [`Order::Sold`].
    pub sold: Vec<(Option<Lumber>, Vec<u16>)>,
    /// See [`Order::OnHand`].
    pub on_hand: Vec<(Lumber, Length, u16)>,
    /// See [`Order::Kerf`].
    pub kerf: Option<Length>,
    /// See [`Order::Percent`].
    pub percents: Vec<(Percent, Decimal)>,
    /// See [`Order::Spares`].
    pub spares: Option<u16>,
    /// See [`Order::Price`].
    pub prices: Vec<(StickOf, Decimal)>,
    /// See [`Order::Labour`].
    pub labour: Option<Decimal>,
}

impl OrderBook {
    /// Takes one fact in; the last told of a thing wins.
    pub(super) fn take(&mut self, fact: &Order) {
        match fact {
            Order::Rail(member, size) => put(&mut self.rails, *member, *size),
            Order::Lay(member, lay) => put(&mut self.lays, *member, *lay),
            Order::Balusters(at) => self.balusters = Some(*at),
            Order::StartWith(with) => self.start = Some(*with),
            Order::Cut(part, l) => put(&mut self.cuts, *part, *l),
            Order::Bracket(l) => self.bracket = Some(*l),
            Order::Bays(n, clear) => {
                self.bays.retain(|(_, c)| c != clear);
                self.bays.push((*n, *clear));
            }
            Order::NoBays => self.bays.clear(),
            Order::Sold(size, feet) => put(&mut self.sold, *size, feet.clone()),
            Order::OnHand(size, l, n) => {
                self.on_hand.retain(|(s, o, _)| (s, o) != (size, l));
                self.on_hand.extend((*n > 0).then_some((*size, *l, *n)));
            }
            Order::Kerf(l) => self.kerf = Some(*l),
            Order::Percent(of, n) => put(&mut self.percents, *of, *n),
            Order::Spares(n) => self.spares = Some(*n),
            Order::Price(stick, price) => put(&mut self.prices, *stick, *price),
            Order::Labour(price) => self.labour = Some(*price),
        }
    }

    /// The facts that make this book, in the order a person would tell them.
    pub fn retold(&self) -> Vec<Order> {
        let mut facts: Vec<Order> = self.rails.iter().map(|(m, s)| Order::Rail(*m, *s)).collect();
        facts.extend(self.lays.iter().map(|(m, l)| Order::Lay(*m, *l)));
        facts.extend(self.balusters.map(Order::Balusters));
        facts.extend(self.start.map(Order::StartWith));
        facts.extend(self.cuts.iter().map(|(p, l)| Order::Cut(*p, *l)));
        facts.extend(self.bracket.map(Order::Bracket));
        facts.extend(self.bays.iter().map(|(n, l)| Order::Bays(*n, *l)));
        facts.extend(self.sold.iter().map(|(s, f)| Order::Sold(*s, f.clone())));
        facts.extend(self.on_hand.iter().map(|(s, l, n)| Order::OnHand(*s, *l, *n)));
        facts.extend(self.kerf.map(Order::Kerf));
        facts.extend(self.percents.iter().map(|(p, n)| Order::Percent(*p, *n)));
        facts.extend(self.spares.map(Order::Spares));
        facts.extend(self.prices.iter().map(|(s, p)| Order::Price(*s, *p)));
        facts.extend(self.labour.map(Order::Labour));
        facts
    }

    /// What a member is cut from: `Some(None)` for no such member, `None` where not told.
    pub fn rail(&self, member: Member) -> Option<Option<Lumber>> {
        get(&self.rails, member)
    }

    /// How a member lies, if told.
    pub fn lay(&self, member: Member) -> Option<Lie> {
        get(&self.lays, member)
    }

    /// How much height a member cut from `size` takes; `None` where how it lies was not told and
    /// matters, or the size table does not hold it.
    pub fn depth(&self, member: Member, size: Lumber) -> Option<Length> {
        let lie = self.lay(member).or(size.is_square().then_some(Lie::Flat))?;
        lie.depth(size)
    }

    /// How long a part is cut, if told.
    pub fn cut(&self, part: LongPart) -> Option<Length> {
        get(&self.cuts, part)
    }

    /// The lengths a size is sold in, in feet: those told for it, or else for all.
    pub fn sold(&self, size: Lumber) -> Option<&[u16]> {
        let of = |s| self.sold.iter().find(|(size, _)| *size == s).map(|(_, feet)| feet.as_slice());
        of(Some(size)).or_else(|| of(None))
    }

    /// What a stick costs, if told.
    pub fn price(&self, stick: StickOf) -> Option<Decimal> {
        get(&self.prices, stick)
    }

    /// A part of a hundred, if told.
    pub fn percent(&self, of: Percent) -> Option<Decimal> {
        get(&self.percents, of)
    }
}

fn put<K: PartialEq, V>(list: &mut Vec<(K, V)>, key: K, value: V) {
    match list.iter_mut().find(|(k, _)| *k == key) {
        Some((_, old)) => *old = value,
        None => list.push((key, value)),
    }
}

fn get<K: PartialEq, V: Copy>(list: &[(K, V)], key: K) -> Option<V> {
    list.iter().find(|(k, _)| *k == key).map(|(_, v)| *v)
}
