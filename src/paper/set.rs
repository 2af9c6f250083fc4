//! A document set on pages.

use super::doc::{Block, Document};
use super::page::{Anchor, Figure, Ink, Page, Shape, block, line, text};
use super::type_face::{broken, width};

/// A size of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Paper {
    /// 8 1/2 by 11 in. (ANSI A, from memory).
    #[default]
    Letter,
    /// 210 by 297 mm (ISO 216).
    A4,
}

impl Paper {
    /// Width and height in points.
    pub fn size(self) -> (f64, f64) {
        match self {
            Paper::Letter => (612.0, 792.0),
            Paper::A4 => (210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0),
        }
    }
}

/// The widest anything is set: it fits between the margins of either paper.
pub const BODY: f64 = 487.0;
/// Paper left free above and below.
const MARGIN: f64 = 54.0;
const SIZE: f64 = 9.0;
const LEAD: f64 = 12.5;
const HEAD: f64 = 11.5;
/// The title on every page.
const TITLE: &str = "Guard: layout, cuts and checks";
const FOOT: &str = "Worked out from what was told. The building department, and where it asks an engineer, decides.";

struct Setter {
    paper: Paper,
    pages: Vec<Vec<Shape>>,
    y: f64,
}

impl Setter {
    fn left(&self) -> f64 {
        (self.paper.size().0 - BODY) / 2.0
    }

    fn bottom(&self) -> f64 {
        self.paper.size().1 - MARGIN
    }

    fn turn(&mut self) {
        self.pages.push(Vec::new());
        self.y = MARGIN + 22.0;
    }

    /// Turns the page where so much does not fit on it any more.
    fn need(&mut self, room: f64) {
        if self.y + room > self.bottom() {
            self.turn();
        }
    }

    fn put(&mut self, shape: Shape) {
        if let Some(page) = self.pages.last_mut() {
            page.push(shape);
        }
    }

    fn words(&mut self, words: &str, lead: &str, bold: bool, indent: f64) {
        let x = self.left() + indent;
        let mark = width(lead, SIZE, true);
        for (k, row) in broken(words, SIZE, bold, BODY - indent - mark).into_iter().enumerate() {
            self.need(LEAD);
            self.y += LEAD;
            let y = self.y;
            if k == 0 && !lead.is_empty() {
                self.put(heavy((x, y), SIZE, lead));
            }
            let shape = text((x + mark, y), SIZE, Anchor::Start, row);
            self.put(if bold { weighed(shape) } else { shape });
        }
    }

    fn heading(&mut self, words: &str) {
        // A heading alone at a page's foot helps nobody.
        self.need(HEAD + 3.0 * LEAD);
        self.y += 10.0 + HEAD;
        let (x, y) = (self.left(), self.y);
        self.put(heavy((x, y), HEAD, words));
        self.put(line((x, y + 3.0), (x + BODY, y + 3.0), 0.6));
        self.y += 4.0;
    }

    fn figure(&mut self, figure: &Figure) {
        self.need(figure.height + 2.0 * LEAD);
        self.y += LEAD + 4.0;
        let (x, y) = (self.left(), self.y);
        self.put(heavy((x, y), 8.0, &figure.title));
        if let Some(scale) = figure.scale {
            self.put(text((x + BODY, y), 8.0, Anchor::End, format!("scale 1:{scale}")));
        }
        self.y += 6.0;
        let by = (x, self.y);
        for shape in &figure.shapes {
            self.put(shape.moved(by));
        }
        self.y += figure.height + 4.0;
    }
}

fn weighed(shape: Shape) -> Shape {
    match shape {
        Shape::Text { at, size, anchor, upright, words, inches, .. } => {
            Shape::Text { at, size, bold: true, anchor, upright, words, inches }
        }
        other => other,
    }
}

fn heavy(at: (f64, f64), size: f64, words: &str) -> Shape {
    weighed(text(at, size, Anchor::Start, words))
}

/// The document on pages of that paper, each with its title and number.
pub fn typeset(document: &Document, paper: Paper) -> Vec<Page> {
    let mut set = Setter { paper, pages: Vec::new(), y: 0.0 };
    set.turn();
    for part in &document.parts {
        set.heading(part.heading);
        for block in &part.blocks {
            match block {
                Block::Lead(words) => set.words(words, "", true, 0.0),
                Block::Row(words) => set.words(words, "", false, 12.0),
                Block::Check(words) => set.words(words, "check  ", false, 0.0),
                Block::Stop(words) => set.words(words, "STOP  ", true, 0.0),
                Block::Figure(figure) => set.figure(figure),
                // Paper has drawings to scale instead.
                Block::Mono(_) => {}
            }
        }
    }
    let (width, height) = paper.size();
    let left = set.left();
    let all = set.pages.len();
    let framed = set.pages.into_iter().enumerate().map(|(k, mut shapes)| {
        shapes.push(heavy((left, MARGIN), 13.0, TITLE));
        shapes.push(text((left + BODY, MARGIN), 8.0, Anchor::End, format!("page {} of {all}", k + 1)));
        shapes.push(block(left, MARGIN + 5.0, BODY, 1.2, Ink::Black, 0.0));
        shapes.push(text((left, height - MARGIN + 18.0), 7.0, Anchor::Start, FOOT));
        Page { width, height, shapes }
    });
    framed.collect()
}
