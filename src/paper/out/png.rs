//! A picture of the pages, one under another, twice as fine as a point.

use super::super::page::{Ink, Page, Shape};
use super::super::type_face::{face, sign, width, width_of};
use super::small;
use tiny_skia::{Color, FillRule, Paint, Path, PathBuilder, Pixmap, Stroke, Transform};
use ttf_parser::OutlineBuilder;

/// Dots to a point.
const FINE: f32 = 2.0;
/// The tallest picture made, in dots; a longer sheet is one for paper.
const TALLEST: f64 = 30_000.0;

/// The picture; `None` where it would be too tall.
pub fn png(pages: &[Page]) -> Option<Vec<u8>> {
    let width = pages.iter().map(|p| p.width).fold(0.0, f64::max) * f64::from(FINE);
    let height = pages.iter().map(|p| p.height).sum::<f64>() * f64::from(FINE);
    if height > TALLEST {
        return None;
    }
    let mut map = Pixmap::new(whole(width), whole(height))?;
    map.fill(Color::WHITE);
    let mut down = 0.0;
    for page in pages {
        let place = Transform::from_scale(FINE, FINE).pre_translate(0.0, small(down));
        page.shapes.iter().for_each(|s| draw(&mut map, s, place));
        down += page.height;
    }
    map.encode_png().ok()
}

/// A count of dots, bounded before.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
fn whole(n: f64) -> u32 {
    n.ceil().clamp(1.0, TALLEST) as u32
}

fn paint(grey: u8) -> Paint<'static> {
    let mut paint = Paint::default();
    paint.set_color_rgba8(grey, grey, grey, 255);
    paint.anti_alias = true;
    paint
}

fn stroked(map: &mut Pixmap, path: &Path, thick: f64, place: Transform) {
    let stroke = Stroke { width: small(thick), ..Stroke::default() };
    map.stroke_path(path, &paint(0), &stroke, place, None);
}

fn draw(map: &mut Pixmap, shape: &Shape, place: Transform) {
    match shape {
        Shape::Line { from, to, thick, .. } => {
            let mut path = PathBuilder::new();
            path.move_to(small(from.0), small(from.1));
            path.line_to(small(to.0), small(to.1));
            if let Some(path) = path.finish() {
                stroked(map, &path, *thick, place);
            }
        }
        Shape::Area { corners, fill, thick } => {
            let mut path = PathBuilder::new();
            for (k, (x, y)) in corners.iter().enumerate() {
                if k == 0 { path.move_to(small(*x), small(*y)) } else { path.line_to(small(*x), small(*y)) }
            }
            path.close();
            let Some(path) = path.finish() else { return };
            let grey = match fill {
                Ink::None => None,
                Ink::White => Some(0xff),
                Ink::Pale => Some(0xe6),
                Ink::Grey => Some(0x9a),
                Ink::Black => Some(0),
            };
            if let Some(grey) = grey {
                map.fill_path(&path, &paint(grey), FillRule::Winding, place, None);
            }
            if *thick > 0.0 {
                stroked(map, &path, *thick, place);
            }
        }
        Shape::Text { at, size, bold, anchor, upright, words, .. } => {
            let long = width(words, *size, *bold);
            let back = anchor.back(long);
            let turned = place.pre_translate(small(at.0), small(at.1));
            let turned = if *upright { turned.pre_rotate(-90.0) } else { turned };
            write(map, words, *size, *bold, turned.pre_translate(small(-back), 0.0));
        }
    }
}

fn write(map: &mut Pixmap, words: &str, size: f64, bold: bool, place: Transform) {
    let Some(face) = face(bold) else { return };
    let scale = small(size / f64::from(face.units_per_em()));
    let mut x = 0.0;
    for c in words.chars() {
        let mut outline = Outline(PathBuilder::new());
        if face.outline_glyph(sign(bold, c), &mut outline).is_some()
            && let Some(path) = outline.0.finish()
        {
            let at = place.pre_translate(small(x), 0.0).pre_scale(scale, -scale);
            map.fill_path(&path, &paint(0), FillRule::Winding, at, None);
        }
        x += width_of(bold, c) * size;
    }
}

/// A sign's outline as a path.
struct Outline(PathBuilder);

impl OutlineBuilder for Outline {
    fn move_to(&mut self, x: f32, y: f32) {
        self.0.move_to(x, y);
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.0.line_to(x, y);
    }

    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.0.quad_to(x1, y1, x, y);
    }

    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.0.cubic_to(x1, y1, x2, y2, x, y);
    }

    fn close(&mut self) {
        self.0.close();
    }
}
