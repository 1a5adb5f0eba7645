//! The document as data: what stands around the blocks, and how raw JSON becomes checked data.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};
use serde_json::Value;

use crate::block::Block;
use crate::columns::Plan;
use crate::geometry::Geometry;
use crate::{Drawings, TypesetError};

/// A checked document.
#[derive(Debug)]
pub(crate) struct Sheet {
    frame: Frame,
    blocks: Vec<Block>,
}

/// Blocks that follow each other on pages that lie the same way, in the shape the template reads.
#[derive(Debug, Serialize)]
pub(crate) struct Section<'a> {
    geometry: Geometry,
    bare: bool,
    blocks: Vec<&'a Block>,
    /// The columns of each block that has some.
    plans: Vec<Option<Plan>>,
}

impl<'a> Section<'a> {
    fn on(page: Page) -> Self {
        Self { geometry: Geometry::new(page), bare: page.bare, blocks: Vec::new(), plans: Vec::new() }
    }

    fn push(&mut self, block: &'a Block) {
        self.plans.push(block.plan(self.geometry));
        self.blocks.push(block);
    }
}

/// Everything of a document but its blocks.
#[derive(Debug, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Frame {
    title: String,
    #[serde(default)]
    subtitle: String,
    language: Language,
    direction: Direction,
    page: Page,
    #[serde(default)]
    footer: String,
    #[serde(default)]
    page_of: String,
    /// Taken as they come; each is read on its own, so that an error can say which.
    #[serde(skip_serializing)]
    blocks: Vec<Value>,
}

#[derive(Debug, Clone, Copy, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Page {
    pub(crate) paper: Paper,
    #[serde(default)]
    pub(crate) landscape: bool,
    /// One form from edge to edge: narrow margins, no title, no footer.
    #[serde(default)]
    pub(crate) bare: bool,
}

#[derive(Debug, Clone, Copy, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Paper {
    A4,
    UsLetter,
}

#[derive(Debug, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
enum Direction {
    Ltr,
    Rtl,
}

/// A language tag cut down to what typst understands: a language of two or three letters and a region of two.
#[derive(Debug, Serialize, Deserialize)]
#[serde(try_from = "String")]
struct Language {
    code: String,
    region: Option<String>,
}

impl TryFrom<String> for Language {
    type Error = String;

    fn try_from(tag: String) -> Result<Self, String> {
        let letters = |part: &str| part.bytes().all(|byte| byte.is_ascii_alphabetic());
        let mut parts = tag.split('-');
        let code = parts
            .next()
            .filter(|code| matches!(code.len(), 2 | 3) && letters(code))
            .ok_or_else(|| format!("language {tag:?} does not start with a code of two or three letters"))?;
        let region = parts.find(|part| part.len() == 2 && letters(part));
        Ok(Self { code: code.to_ascii_lowercase(), region: region.map(str::to_ascii_uppercase) })
    }
}

impl Sheet {
    /// Reads and checks a document.
    pub(crate) fn read(document: &Value) -> Result<Self, TypesetError> {
        let mut frame = Frame::deserialize(document)
            .map_err(|error| TypesetError::BadDocument { reason: error.to_string() })?;
        let blocks = std::mem::take(&mut frame.blocks)
            .iter()
            .enumerate()
            .map(|(index, block)| Block::read(index, block))
            .collect::<Result<_, _>>()?;
        Ok(Self { frame, blocks })
    }

    /// What stands around the blocks.
    pub(crate) fn frame(&self) -> &Frame {
        &self.frame
    }

    /// Its blocks by the pages they stand on. There is always a first, for the title.
    pub(crate) fn sections(&self) -> Vec<Section<'_>> {
        let mut page = self.frame.page;
        let mut done = Vec::new();
        let mut section = Section::on(page);
        for block in &self.blocks {
            match block {
                Block::Page { landscape, bare } => {
                    page = Page { landscape: *landscape, bare: *bare, ..page };
                    let before = std::mem::replace(&mut section, Section::on(page));
                    done.extend((!before.blocks.is_empty()).then_some(before));
                }
                _ => section.push(block),
            }
        }
        done.push(section);
        done
    }

    /// The drawings that blocks call for, each once.
    pub(crate) fn drawings<'a>(
        &'a self,
        given: &'a Drawings,
    ) -> Result<BTreeMap<&'a str, &'a str>, TypesetError> {
        let called = self
            .blocks
            .iter()
            .enumerate()
            .flat_map(|(index, block)| block.drawings().into_iter().map(move |name| (index, name)));
        called
            .map(|(index, name)| match given.get(name) {
                Some(svg) => Ok((name, svg.as_str())),
                None => Err(TypesetError::MissingDrawing { index, name: name.to_owned() }),
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn language(tag: &str) -> Result<(String, Option<String>), String> {
        Language::try_from(tag.to_owned()).map(|language| (language.code, language.region))
    }

    #[test]
    fn a_language_tag_is_cut_down_to_code_and_region() {
        assert_eq!(language("en"), Ok(("en".to_owned(), None)));
        assert_eq!(language("pt-br"), Ok(("pt".to_owned(), Some("BR".to_owned()))));
        assert_eq!(language("zh-Hant-TW"), Ok(("zh".to_owned(), Some("TW".to_owned()))));
        assert_eq!(language("sw-x-plain"), Ok(("sw".to_owned(), None)));
        assert!(language("english").is_err());
        assert!(language("").is_err());
    }
}
