//! One HTML file with a drawing for each page: no script, nothing fetched.

use super::super::page::Page;
use super::svg;

/// The pages, each on its own sheet when printed.
pub fn html(pages: &[Page]) -> String {
    let (width, height) = pages.first().map_or((612.0, 792.0), |p| (p.width, p.height));
    let drawn: String = pages.iter().map(|p| format!("<div class=\"page\">{}</div>\n", svg::page(p))).collect();
    format!(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; font-src data:\">\n\
         <meta name=\"viewport\" content=\"width=device-width\">\n<title>Guard: layout, cuts and checks</title>\n\
         <style>{}\n@page{{size:{width:.2}pt {height:.2}pt;margin:0}}\n\
         body{{margin:0;background:#fff}}\n.page{{break-after:page}}\n.page svg{{display:block;margin:0 auto}}\n\
         @media screen{{.page{{border-bottom:1px solid #9a9a9a}}}}</style>\n</head>\n<body>\n{drawn}</body>\n</html>\n",
        svg::faces()
    )
}
