//! The posts of a stair guard: from the top post, which the level guard shares, down to the
//! bottom newel, with as few posts between as the limit lets.

use super::{Rake, counted, inches, times, whole, worked};
use crate::figure::Fig;
use crate::measure::{Length, Tape};

/// More bays than any flight has room for: the search stops here.
const MOST_BAYS: u16 = 60;

/// Which way a post limit is laid on a stair.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Laid {
    /// Along the slope, as the rail runs.
    Slope,
    /// On the level, as a plan shows it.
    Level,
}

/// The limits on a bay of the stair guard.
#[derive(Clone, Debug, PartialEq)]
pub struct Most {
    /// Most on centre.
    pub centre: Option<Fig>,
    /// Most clear.
    pub clear: Option<Fig>,
}

/// What the stair guard is laid out from.
#[derive(Clone, Debug, PartialEq)]
pub struct Site {
    /// The slope.
    pub rake: Rake,
    /// Nosings down the flight, the decking's not counted.
    pub nosings: u16,
    /// Rail top, plumb above the nosing line.
    pub height: Fig,
    /// The top post's centre, upslope of the decking's nosing.
    pub top_back: Fig,
    /// The bottom newel's centre, upslope of the lowest nosing; below nothing past it.
    pub foot_back: Fig,
    /// How wide the top post, the posts between and the newel are.
    pub widths: [Fig; 3],
    /// The limits.
    pub most: Most,
}

/// What a post stands on, or beside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stands {
    /// The decking.
    Deck,
    /// A tread, counted down from the decking.
    Tread(u16),
    /// The ground or landing at the foot.
    Landing,
}

/// One post of a stair guard.
#[derive(Clone, Debug, PartialEq)]
pub struct RakePost {
    /// Its centre on the level from the top post's centre.
    pub at: Fig,
    /// The same along the slope.
    pub along: Fig,
    /// What it stands on or beside.
    pub stands: Stands,
    /// How far its centre lies upslope of that tread's nosing.
    pub behind: Fig,
    /// The rail's top at its centre, above what it stands on.
    pub above: Fig,
}

/// The space between two posts of a stair guard.
#[derive(Clone, Debug, PartialEq)]
pub struct RakeBay {
    /// Face to face on the level: what balusters are spaced in.
    pub clear: Fig,
    /// The widest the clear is on the level once the posts stand on marks the tape can read.
    pub built: Length,
    /// Face to face along the slope: a rail cut plumb at both ends is so long.
    pub clear_along: Fig,
    /// Centre to centre on the level.
    pub centre: Fig,
    /// Centre to centre along the slope.
    pub centre_along: Fig,
}

/// The stair guard laid out.
#[derive(Clone, Debug, PartialEq)]
pub struct RakeGuard {
    /// Which way the limit was laid.
    pub laid: Laid,
    /// Top post's centre to newel's centre on the level.
    pub span: Fig,
    /// The same along the slope.
    pub slope: Fig,
    /// How many bays.
    pub count: Fig,
    /// The posts, from the top down.
    pub posts: Vec<RakePost>,
    /// The bays, from the top down.
    pub bays: Vec<RakeBay>,
    /// The rail's top above the landing at the newel's centre.
    pub newel_above_landing: Fig,
}

/// Lays the guard out with the fewest bays that pass the limits. `None` where the posts told
/// leave no room, or no count of bays would do.
pub fn lay_out(site: &Site, laid: Laid, tape: Tape) -> Option<RakeGuard> {
    let bays = (1..=MOST_BAYS).take_while(|n| site.clear(*n).is_positive()).find(|n| site.passes(*n, laid, tape))?;
    Some(site.guard(bays, laid, tape))
}

impl Site {
    fn span(&self) -> Length {
        times(inches(self.rake.tread()), self.nosings) + inches(&self.top_back) - inches(&self.foot_back)
    }

    fn span_fig(&self) -> Fig {
        let nosings = counted(self.nosings, "the nosings below the decking's", Vec::new());
        let from = vec![
            ("treads", nosings),
            ("tread", self.rake.tread().clone()),
            ("top post behind the decking's nosing", self.top_back.clone()),
            ("newel behind the lowest nosing", self.foot_back.clone()),
        ];
        worked(self.span(), "nosing to nosing on the level, and what the posts stand off them", from)
    }

    fn width(&self, i: usize) -> Length {
        inches(&self.widths[i])
    }

    /// Each clear of `n` equal bays.
    fn clear(&self, n: u16) -> Length {
        let line = times(self.width(1), n.saturating_sub(1));
        (self.span() - (self.width(0) + self.width(2)) / 2 - line) / i64::from(n.max(1))
    }

    /// Post `k` of `n` bays: its centre from the top post's.
    fn centre(&self, n: u16, k: u16) -> Length {
        match k {
            0 => Length::ZERO,
            k if k == n => self.span(),
            k => {
                let before = self.clear(n).times(whole(k)).unwrap_or(Length::ZERO);
                self.width(0) / 2 + before + times(self.width(1), k - 1) + self.width(1) / 2
            }
        }
    }

    fn passes(&self, n: u16, laid: Laid, tape: Tape) -> bool {
        let lay = |l: Length| if laid == Laid::Slope { self.rake.stretched(l) } else { l };
        let within = |most: &Option<Fig>, l: Length| most.as_ref().is_none_or(|m| l <= inches(m));
        let marks: Vec<Length> = (0..=n).map(|k| self.centre(n, k)).collect();
        marks.windows(2).all(|pair| {
            let read = tape.round(lay(pair[1])) - tape.round(lay(pair[0]));
            within(&self.most.centre, read) && within(&self.most.centre, lay(pair[1] - pair[0]))
        }) && within(&self.most.clear, lay(self.clear(n)))
    }

    fn guard(&self, n: u16, laid: Laid, tape: Tape) -> RakeGuard {
        let span = self.span_fig();
        let count = counted(n, "the fewest bays that pass no limit", self.limits());
        RakeGuard {
            laid,
            slope: self.rake.along(&span),
            posts: (0..=n).map(|k| self.post(n, k, &span)).collect(),
            bays: (0..n).map(|k| self.bay(n, k, &span, &count, tape)).collect(),
            newel_above_landing: self.newel_above_landing(),
            span,
            count,
        }
    }

    fn limits(&self) -> Vec<(&'static str, Fig)> {
        let centre = self.most.centre.clone().map(|f| ("most on centre", f));
        centre.into_iter().chain(self.most.clear.clone().map(|f| ("most clear", f))).collect()
    }

    fn bay(&self, n: u16, k: u16, span: &Fig, count: &Fig, tape: Tape) -> RakeBay {
        let from = || {
            vec![
                ("posts' centres, top to newel", span.clone()),
                ("bays", count.clone()),
                ("post", self.widths[1].clone()),
            ]
        };
        let clear = worked(self.clear(n), "what the posts leave, over the bays", from());
        let centre = worked(self.centre(n, k + 1) - self.centre(n, k), "from one post's centre to the next", from());
        // Taken between marks along the slope, so that the bays sum to the whole slope.
        let along = self.rake.stretched(self.centre(n, k + 1)) - self.rake.stretched(self.centre(n, k));
        let says = "from one post's centre to the next, along the slope";
        RakeBay {
            built: self.built(n, k, tape),
            clear_along: self.rake.along(&clear),
            centre_along: worked(along, says, vec![("on the level", centre.clone())]),
            clear,
            centre,
        }
    }

    /// A bay's clear with its posts on rounded marks, taken on the level or along the slope: the wider.
    fn built(&self, n: u16, k: u16, tape: Tape) -> Length {
        let wide = |k: u16| {
            self.width(if k == 0 {
                0
            } else if k == n {
                2
            } else {
                1
            })
        };
        let posts = (wide(k) + wide(k + 1)) / 2;
        let level = |k: u16| tape.round(self.centre(n, k));
        let along = |k: u16| self.rake.shrunk(tape.round(self.rake.stretched(self.centre(n, k))));
        (level(k + 1) - level(k)).max(along(k + 1) - along(k)) - posts
    }

    fn post(&self, n: u16, k: u16, span: &Fig) -> RakePost {
        let l = self.centre(n, k);
        let number = counted(k, "bays above it", Vec::new());
        let from = vec![("posts' centres, top to newel", span.clone()), ("bays above it", number)];
        let at = worked(l, "so many equal bays from the top post", from);
        let (stands, behind) = self.under(l);
        RakePost { along: self.rake.along(&at), above: self.above(&behind, stands), at, stands, behind }
    }

    /// What a post so far from the top post stands on, and how far behind its nosing.
    fn under(&self, from_top: Length) -> (Stands, Fig) {
        let x = from_top - inches(&self.top_back);
        let tread = inches(self.rake.tread());
        let step = x.ratio(tread).map_or(whole(0), |q| q.ceil());
        let (stands, nosing) = match u16::try_from(step.to_integer()) {
            Ok(0) | Err(_) => (Stands::Deck, Length::ZERO),
            Ok(k) if k > self.nosings => (Stands::Landing, times(tread, self.nosings)),
            Ok(k) => (Stands::Tread(k), times(tread, k)),
        };
        let from = vec![("tread", self.rake.tread().clone())];
        (stands, worked(nosing - x, "from the post's centre to the nosing of what it stands on", from))
    }

    /// The rail's top over that: the height, and the rake's drop to the nosing.
    fn above(&self, behind: &Fig, stands: Stands) -> Fig {
        let drop = self.rake.drop(behind);
        let landing = if stands == Stands::Landing { inches(self.rake.rise()) } else { Length::ZERO };
        let mut from =
            vec![("height above the nosing line", self.height.clone()), ("drop to that nosing", drop.clone())];
        let says = match stands {
            Stands::Landing => {
                from.push(("the bottom riser", self.rake.rise().clone()));
                "height + drop from there to the lowest nosing + the bottom riser"
            }
            _ => "height + (distance behind the nosing x riser over tread)",
        };
        worked(inches(&self.height) + inches(&drop) + landing, says, from)
    }

    fn newel_above_landing(&self) -> Fig {
        let drop = self.rake.drop(&self.foot_back);
        let l = inches(&self.height) + inches(&drop) + inches(self.rake.rise());
        let from = vec![
            ("height above the nosing line", self.height.clone()),
            ("drop to the lowest nosing", drop),
            ("the bottom riser", self.rake.rise().clone()),
        ];
        worked(l, "height + drop to the lowest nosing + the bottom riser", from)
    }
}
