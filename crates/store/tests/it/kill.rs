//! The process dies between a commit and its answer. A second process writes, is killed without warning, and what it had
//! said was safe must be there; sending all of it again must change nothing.

use std::io::{BufRead, BufReader};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};

use store::Store;

use crate::phone::{owner, series, stored};
use crate::rig::{Folder, open, with_farms};

const BOOK: &str = "BROODWRIGHT_TEST_KILLED_BOOK";

#[tokio::test]
async fn what_a_killed_process_acknowledged_is_there_and_resending_is_harmless() {
    let folder = Folder::new("kill");
    drop(with_farms(open(&folder.book())).await);
    for round in 1..=3 {
        let acknowledged = kill_after(&folder, 20 * round);
        let store = open(&folder.book());
        let kept = u64::try_from(store.all(&owner()).await.unwrap().len()).unwrap();
        // The last answers may have been lost with the process; nothing more may be.
        assert!(kept >= acknowledged, "{acknowledged} were acknowledged, {kept} are there");
        let again = store.append(&owner(), series(1, 1..=kept)).await.unwrap();
        assert_eq!((again.added, again.already_there), (0, usize::try_from(kept).unwrap()));
        assert_eq!(store.all(&owner()).await.unwrap(), series(1, 1..=kept));
        assert_eq!(store.reach(&owner()).await.unwrap().seen[&owner().device()], kept);
    }
}

/// Starts the writer and kills it once it has acknowledged so many more; gives the last number it acknowledged.
fn kill_after(folder: &Folder, count: usize) -> u64 {
    let mut writer = start_writer(folder.book());
    let lines = BufReader::new(writer.stdout.take().unwrap()).lines();
    let mut numbers = lines.map_while(Result::ok).filter_map(|line| line.parse::<u64>().ok());
    let last = numbers.by_ref().take(count).last().unwrap();
    writer.kill().unwrap();
    writer.wait().unwrap();
    numbers.last().unwrap_or(last)
}

fn start_writer(book: PathBuf) -> Child {
    Command::new(std::env::current_exe().unwrap())
        .args(["kill::write_until_killed", "--exact", "--ignored", "--nocapture"])
        .env(BOOK, book)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap()
}

#[tokio::test]
#[ignore = "the process that is killed, started by the test above"]
async fn write_until_killed() {
    let store = open(&PathBuf::from(std::env::var_os(BOOK).unwrap()));
    let done = store.device_tip(&owner()).await.unwrap().map_or(0, |tip| tip.sequence);
    for sequence in done + 1.. {
        store.append(&owner(), vec![stored(1, sequence)]).await.unwrap();
        println!("{sequence}");
    }
}
