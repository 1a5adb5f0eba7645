//! A plan on a phone: the answers first, what stands behind each folded below its question.

use crate::rig::{Browser, memory};

const CHAPTER: &str = r#"<details class="chapter">"#;

/// The values of an attribute in a piece of a page.
fn values<'a>(page: &'a str, attribute: &str) -> Vec<&'a str> {
    let opening = format!("{attribute}=\"");
    page.split(opening.as_str()).skip(1).filter_map(|rest| rest.split('"').next()).collect()
}

/// A browser opens a folded part for a link that leads into it, not for one that leads to its head.
#[tokio::test]
async fn a_question_leads_into_the_chapter_that_answers_it() {
    let browser = Browser::new(&memory()).await;
    let page = browser.get(&browser.mango_ridge().await).await.text();
    let (lead, chapters) = page.split_once(CHAPTER).unwrap();
    let chapters: Vec<&str> = chapters.split(CHAPTER).collect();
    let questions: Vec<&str> =
        values(lead, "href").into_iter().filter_map(|href| href.strip_prefix('#')).collect();
    let asked: Vec<&&str> = questions.iter().filter(|anchor| anchor.starts_with("question-")).collect();
    assert!(asked.len() > 8, "{questions:?}");
    for anchor in asked {
        let holds = |chapter: &&&str| {
            let (head, inner) = chapter.split_once("</summary>").unwrap();
            assert!(!values(head, "id").contains(anchor), "{anchor} stands on the head, which opens nothing");
            values(inner, "id").contains(anchor)
        };
        assert_eq!(chapters.iter().filter(holds).count(), 1, "{anchor}");
    }
}

/// Folded, a chapter costs one line; the answers and what does not hold are read without opening any.
#[tokio::test]
async fn answers_and_problems_are_read_without_opening_a_chapter() {
    let browser = Browser::new(&memory()).await;
    let page = browser.get(&browser.mango_ridge().await).await.text();
    assert!(!page.contains(r#"<details class="chapter" open"#));
    let (lead, chapters) = page.split_once(CHAPTER).unwrap();
    assert!(lead.contains("135") && lead.contains("XTS"), "what it costs");
    assert!(lead.contains("Too many birds for this floor"), "whether it fits");
    // Every heading of a chapter is its fold's, so that none stands open between two.
    let heads = chapters.matches("<summary><h2>").count();
    assert_eq!(heads, chapters.matches(CHAPTER).count() + 1);
}

/// Figures keep to one line, words break theirs: a long cell that may not would push its table off a phone of 360 px.
#[tokio::test]
async fn a_long_cell_may_break_its_lines() {
    let browser = Browser::new(&memory()).await;
    let page = browser.get(&browser.mango_ridge().await).await.text();
    let cells = page.split(r#"<td class="end">"#).skip(1).filter_map(|rest| rest.split("</td>").next());
    let long: Vec<&str> = cells.filter(|cell| !cell.contains('<') && cell.chars().count() > 24).collect();
    assert_eq!(long, [""; 0]);
}
