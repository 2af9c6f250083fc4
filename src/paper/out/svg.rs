//! SVG 1.1: every text is text, every length in points.

use super::super::page::{Anchor, Ink, Page, Shape};
use super::super::type_face::{BOLD, PLAIN};
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use std::fmt::Write as _;

/// All pages in one drawing, one under another.
pub fn svg(pages: &[Page]) -> String {
    let width = pages.iter().map(|p| p.width).fold(0.0, f64::max);
    let height: f64 = pages.iter().map(|p| p.height).sum();
    let mut out = opened(width, height);
    let _ = writeln!(out, "<style>{}</style>", faces());
    out.push_str("<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n");
    let mut y = 0.0;
    for page in pages {
        let _ = writeln!(out, "<g transform=\"translate(0 {y:.2})\">");
        page.shapes.iter().for_each(|s| shape(&mut out, s));
        out.push_str("</g>\n");
        y += page.height;
    }
    out.push_str("</svg>\n");
    out
}

/// One page as a drawing that borrows its type face from what it stands in.
pub fn page(page: &Page) -> String {
    let mut out = opened(page.width, page.height);
    page.shapes.iter().for_each(|s| shape(&mut out, s));
    out.push_str("</svg>\n");
    out
}

fn opened(width: f64, height: f64) -> String {
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width:.2}pt\" height=\"{height:.2}pt\" \
         viewBox=\"0 0 {width:.2} {height:.2}\" font-family=\"Sheet, 'DejaVu Sans', sans-serif\">\n"
    )
}

/// The type face, carried along.
pub fn faces() -> String {
    let face = |bytes: &[u8], weight: &str| {
        let data = STANDARD.encode(bytes);
        format!("@font-face{{font-family:Sheet;font-weight:{weight};src:url(data:font/ttf;base64,{data})}}")
    };
    face(PLAIN, "400") + &face(BOLD, "700")
}

fn ink(ink: Ink) -> &'static str {
    match ink {
        Ink::None => "none",
        Ink::White => "#fff",
        Ink::Pale => "#e6e6e6",
        Ink::Grey => "#9a9a9a",
        Ink::Black => "#000",
    }
}

fn shape(out: &mut String, shape: &Shape) {
    // Writing to a string does not fail.
    let _ = match shape {
        Shape::Line { from, to, thick, dashed } => {
            let dash = if *dashed { " stroke-dasharray=\"3 2\"" } else { "" };
            writeln!(
                out,
                "<line x1=\"{:.2}\" y1=\"{:.2}\" x2=\"{:.2}\" y2=\"{:.2}\" stroke=\"#000\" stroke-width=\"{thick}\"{dash}/>",
                from.0, from.1, to.0, to.1
            )
        }
        Shape::Area { corners, fill, thick } => {
            let points: Vec<String> = corners.iter().map(|(x, y)| format!("{x:.3},{y:.3}")).collect();
            let stroke =
                if *thick > 0.0 { format!(" stroke=\"#000\" stroke-width=\"{thick}\"") } else { String::new() };
            writeln!(out, "<polygon points=\"{}\" fill=\"{}\"{stroke}/>", points.join(" "), ink(*fill))
        }
        Shape::Text { at, size, bold, anchor, upright, words, inches } => {
            let anchor = match anchor {
                Anchor::Start => "start",
                Anchor::Middle => "middle",
                Anchor::End => "end",
            };
            let weight = if *bold { " font-weight=\"700\"" } else { "" };
            let turn =
                if *upright { format!(" transform=\"rotate(-90 {:.2} {:.2})\"", at.0, at.1) } else { String::new() };
            let tells = inches.as_ref().map_or(String::new(), |l| format!(" data-inches=\"{}\"", escaped(l)));
            writeln!(
                out,
                "<text x=\"{:.2}\" y=\"{:.2}\" font-size=\"{size}\" text-anchor=\"{anchor}\"{weight}{turn}{tells}>{}</text>",
                at.0,
                at.1,
                escaped(words)
            )
        }
    };
}

/// Text as XML and HTML take it; what neither takes at all is left out.
pub fn escaped(words: &str) -> String {
    let mut out = String::with_capacity(words.len());
    for c in words.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_typed_is_markup() {
        assert_eq!(escaped("<script>\"a'&\u{1b}[2J\0"), "&lt;script&gt;&quot;a&#39;&amp;[2J");
    }
}
