//! `railhand sheet`: a job file's sheet, written by the ending of the file it goes to.

use super::out::Trouble;
use crate::paper::{Form, Paper, write};
use crate::store::Store;
use std::io;
use std::path::Path;

/// Writes the sheet of a job file.
///
/// # Errors
/// The job file is not there or not readable, the ending names no form, or the sheet cannot be written.
pub fn sheet(job: &Path, to: &Path, paper: Paper) -> Result<(), Trouble> {
    let name = to.display().to_string();
    let amiss = |why: &str| Trouble::Sheet(name.clone(), io::Error::other(why.to_owned()));
    let form = to.extension().and_then(|e| e.to_str()).and_then(Form::of_ending);
    let form = form.ok_or_else(|| amiss("name it so that it ends in .html, .pdf, .svg, .png or .md"))?;
    // Opened to talk on, a job file is made where there is none; a sheet of nothing helps nobody.
    if let Err(why) = job.metadata() {
        return Err(Trouble::Sheet(job.display().to_string(), why));
    }
    let opened = Store::open(job).map_err(Trouble::Job)?;
    let bytes = write(opened.session.job(), form, paper)
        .ok_or_else(|| amiss("it is too long for one picture: make it a .pdf or .html"))?;
    std::fs::write(to, bytes).map_err(|why| Trouble::Sheet(name.clone(), why))
}
