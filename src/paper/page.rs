//! Pages of plain shapes and text, in points (1/72 in.) from the top left corner.

/// How dark an area or a line is. Paper is read in black and white.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ink {
    /// None: what lies below shows.
    None,
    /// The paper's own.
    White,
    /// A light grey.
    Pale,
    /// A middle grey.
    Grey,
    /// Black.
    Black,
}

/// Where a text stands against its place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// It begins there.
    Start,
    /// Its middle is there.
    Middle,
    /// It ends there.
    End,
}

impl Anchor {
    /// How far before its place a text so long begins.
    pub fn back(self, long: f64) -> f64 {
        match self {
            Anchor::Start => 0.0,
            Anchor::Middle => long / 2.0,
            Anchor::End => long,
        }
    }
}

/// One shape.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A line.
    Line {
        /// From.
        from: (f64, f64),
        /// To.
        to: (f64, f64),
        /// How thick.
        thick: f64,
        /// Broken into dashes.
        dashed: bool,
    },
    /// A closed outline.
    Area {
        /// Its corners.
        corners: Vec<(f64, f64)>,
        /// What fills it.
        fill: Ink,
        /// How thick its outline is; 0 for none.
        thick: f64,
    },
    /// A text on one line.
    Text {
        /// Its place on the base line.
        at: (f64, f64),
        /// Its height.
        size: f64,
        /// Heavy.
        bold: bool,
        /// Where it stands against its place.
        anchor: Anchor,
        /// Read from the right: turned a quarter against the clock.
        upright: bool,
        /// The words.
        words: String,
        /// For a dimension: the length it tells, in inches, exactly.
        inches: Option<String>,
    },
}

/// Shapes with the room they take, and the scale they are drawn to.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// What it shows.
    pub title: String,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// So many inches of the job to one on paper; `None` for what is not to scale.
    pub scale: Option<u32>,
    /// The shapes.
    pub shapes: Vec<Shape>,
}

/// One page.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// The shapes.
    pub shapes: Vec<Shape>,
}

impl Shape {
    /// The shape moved.
    pub fn moved(&self, by: (f64, f64)) -> Shape {
        let go = |(x, y): (f64, f64)| (x + by.0, y + by.1);
        match self.clone() {
            Shape::Line { from, to, thick, dashed } => Shape::Line { from: go(from), to: go(to), thick, dashed },
            Shape::Area { corners, fill, thick } => {
                Shape::Area { corners: corners.into_iter().map(go).collect(), fill, thick }
            }
            Shape::Text { at, size, bold, anchor, upright, words, inches } => {
                Shape::Text { at: go(at), size, bold, anchor, upright, words, inches }
            }
        }
    }
}

/// A plain line.
pub fn line(from: (f64, f64), to: (f64, f64), thick: f64) -> Shape {
    Shape::Line { from, to, thick, dashed: false }
}

/// A rectangle in dashes: what is drawn and was not told.
pub fn dashed(x: f64, y: f64, width: f64, height: f64, thick: f64) -> Vec<Shape> {
    let (right, foot) = (x + width, y + height);
    let sides = [((x, y), (right, y)), ((right, y), (right, foot)), ((right, foot), (x, foot)), ((x, foot), (x, y))];
    sides.into_iter().map(|(from, to)| Shape::Line { from, to, thick, dashed: true }).collect()
}

/// A rectangle.
pub fn block(x: f64, y: f64, width: f64, height: f64, fill: Ink, thick: f64) -> Shape {
    area(vec![(x, y), (x + width, y), (x + width, y + height), (x, y + height)], fill, thick)
}

/// A closed outline.
pub fn area(corners: Vec<(f64, f64)>, fill: Ink, thick: f64) -> Shape {
    Shape::Area { corners, fill, thick }
}

/// A plain text.
pub fn text(at: (f64, f64), size: f64, anchor: Anchor, words: impl Into<String>) -> Shape {
    Shape::Text { at, size, bold: false, anchor, upright: false, words: words.into(), inches: None }
}
