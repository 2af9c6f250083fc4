//! What is told of the posts' feet: what they pass, how they end, how they are cut.

use crate::measure::Length;

/// What becomes of the decking's nosing where a post passes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Nosing {
    /// Cut back at each post to what carries it: one depth of notch.
    CutBack,
    /// Left whole: the foot is stepped round it, with two depths.
    Whole,
}

/// Which way a post at an angled corner is turned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turned {
    /// Square to the side walked first, left of it looking out.
    First,
    /// Square to the next side.
    Next,
    /// Splitting the corner's turn in half.
    Split,
}

/// Why a notch the rules bar is cut all the same.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anyway {
    /// What is notched is a sleeve that carries nothing: a whole post stands in it.
    Sleeve,
    /// Said so, without a reason.
    Told,
}

/// One fact of the posts' feet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Foot {
    /// The nosing at the posts.
    Nosing(Nosing),
    /// How thick the decking is.
    Decking(Length),
    /// How tall the rim is, top to bottom.
    RimTall(Length),
    /// How thick a cap that lies on the posts is; nothing where none does.
    Cap(Length),
    /// How far the posts stand above the top of the rail.
    Above(Length),
    /// The saw's blade, across.
    Blade(Length),
    /// The bolts, across.
    Bolt(Length),
    /// Which way a post at an angled corner is turned.
    Turned(Turned),
    /// A barred notch, kept to.
    Anyway(Anyway),
    /// A notch at the rail, up top; none at the deck.
    RailNotch(Length),
}

/// What has been told of the posts' feet. What was not told is `None`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct FootTold {
    /// See [`Foot::Nosing`].
    pub nosing: Option<Nosing>,
    /// See [`Foot::Decking`].
    pub decking: Option<Length>,
    /// See [`Foot::RimTall`].
    pub rim_tall: Option<Length>,
    /// See [`Foot::Cap`].
    pub cap: Option<Length>,
    /// See [`Foot::Above`].
    pub above: Option<Length>,
    /// See [`Foot::Blade`].
    pub blade: Option<Length>,
    /// See [`Foot::Bolt`].
    pub bolt: Option<Length>,
    /// See [`Foot::Turned`].
    pub turned: Option<Turned>,
    /// See [`Foot::Anyway`].
    pub anyway: Option<Anyway>,
    /// See [`Foot::RailNotch`].
    pub rail_notch: Option<Length>,
}

impl FootTold {
    /// Takes one fact in; the last told wins. A cap on the posts and posts above the rail
    /// are two ways to end a post: the later puts the earlier out.
    pub fn set(&mut self, fact: Foot) {
        match fact {
            Foot::Nosing(n) => self.nosing = Some(n),
            Foot::Decking(l) => self.decking = Some(l),
            Foot::RimTall(l) => self.rim_tall = Some(l),
            Foot::Cap(l) => (self.cap, self.above) = (Some(l), None),
            Foot::Above(l) => (self.cap, self.above) = (None, Some(l)),
            Foot::Blade(l) => self.blade = Some(l),
            Foot::Bolt(l) => self.bolt = Some(l),
            Foot::Turned(t) => self.turned = Some(t),
            Foot::Anyway(a) => self.anyway = Some(a),
            Foot::RailNotch(l) => self.rail_notch = Some(l),
        }
    }

    /// The facts that make this, in the order a person would tell them.
    pub fn facts(&self) -> Vec<Foot> {
        let all = [
            self.decking.map(Foot::Decking),
            self.rim_tall.map(Foot::RimTall),
            self.nosing.map(Foot::Nosing),
            self.cap.map(Foot::Cap),
            self.above.map(Foot::Above),
            self.turned.map(Foot::Turned),
            self.bolt.map(Foot::Bolt),
            self.blade.map(Foot::Blade),
            self.rail_notch.map(Foot::RailNotch),
            self.anyway.map(Foot::Anyway),
        ];
        all.into_iter().flatten().collect()
    }
}
