//! What `serve` needs to let phones of the farm's network in: an address, a name, a certificate.

use std::fs;
use std::io::{self, Write};
use std::net::SocketAddr;
use std::path::{Path, PathBuf};

use clap::ArgMatches;
use present::{Words, say};
use quantity::CivilDay;
use serve::{Certificate, Names, Phones};

use crate::clock;
use crate::failure::Failure;
use crate::farm_book;

/// What is behind the name of a book's file in the name of the folder beside it.
const FOLDER_END: &str = ".phones";

/// A certificate that was made holds 800 days; it is made anew while it still has a season before it.
const KEPT_D: i32 = 700;

const MILLIS_A_DAY: i64 = 86_400_000;

/// The listener, the names and the certificate for phones; `None` where none are to be served.
pub async fn of(given: &ArgMatches, words: &Words) -> Result<Option<Phones>, Failure> {
    let Some(typed) = given.get_one::<String>("network") else { return Ok(None) };
    let unusable = || Failure::input(say!(words, "serve-network-unusable", typed = typed));
    let address: SocketAddr = typed.parse().map_err(|_| unusable())?;
    let listener =
        serve::bind_network(address).await.map_err(|error| super::serve::refused(&error, words))?;
    let names = Names { name: given.get_one::<String>("name").cloned(), address: address.ip() };
    let certificate = match given.get_one::<PathBuf>("certificate").zip(given.get_one::<PathBuf>("key")) {
        Some((chain, key)) => {
            Certificate { authority: None, chain: read(chain, words)?, key: read(key, words)? }
        }
        None if given.get_one::<String>("database").is_some() => {
            return Err(Failure::input(words.plain("serve-certificate-where")));
        }
        None => beside(farm_book::path(given), &names, words)?,
    };
    Ok(Some(Phones { listener, names, certificate }))
}

/// The certificate that stands beside a book, made where there is none for these names.
fn beside(book: &Path, names: &Names, words: &Words) -> Result<Certificate, Failure> {
    let mut folder = book.as_os_str().to_owned();
    folder.push(FOLDER_END);
    let folder = PathBuf::from(folder);
    let today = CivilDay::from_number(i32::try_from(clock::now() / MILLIS_A_DAY).unwrap_or(i32::MAX));
    if is_for(&folder, names, today) {
        return Ok(Certificate {
            authority: Some(read(&folder.join("authority.pem"), words)?),
            chain: read(&folder.join("certificate.pem"), words)?,
            key: read(&folder.join("key.pem"), words)?,
        });
    }
    let called = say!(words, "phones-authority", names = names.all().join(", "));
    let made = serve::certificate(names, &called, today).map_err(|error| {
        let names = names.all().join(", ");
        Failure::input(say!(words, "serve-certificate-failed", names = names, why = error.to_string()))
    })?;
    keep(&folder, names, today, &made).map_err(|error| unreadable(&folder, &error, words))?;
    let place = folder.display().to_string();
    let told = say!(words, "serve-certificate-made", names = names.all().join(", "), folder = place);
    super::print(&(told + "\n"))?;
    Ok(made)
}

/// What it was made for: the day it was made, and the names.
fn made_for(names: &Names, day: CivilDay) -> String {
    format!("{day}\n{}\n", names.all().join("\n"))
}

fn is_for(folder: &Path, names: &Names, today: CivilDay) -> bool {
    let Ok(text) = fs::read_to_string(folder.join("made-for")) else { return false };
    let made = text.lines().next().and_then(CivilDay::parse);
    made.is_some_and(|made| text == made_for(names, made) && today.days_since(made) < KEPT_D)
}

/// What says for whom it was made is written last: half of it is made anew.
fn keep(folder: &Path, names: &Names, today: CivilDay, made: &Certificate) -> io::Result<()> {
    fs::create_dir_all(folder)?;
    let _ = fs::remove_file(folder.join("made-for"));
    fs::write(folder.join("authority.pem"), made.authority.as_deref().unwrap_or_default())?;
    fs::write(folder.join("certificate.pem"), &made.chain)?;
    let key = folder.join("key.pem");
    let _ = fs::remove_file(&key);
    for_owner_alone(&key)?.write_all(made.key.as_bytes())?;
    fs::write(folder.join("made-for"), made_for(names, today))
}

/// A new file that nobody else on this machine reads.
fn for_owner_alone(file: &Path) -> io::Result<fs::File> {
    let mut options = fs::OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    options.open(file)
}

fn read(file: &Path, words: &Words) -> Result<String, Failure> {
    fs::read_to_string(file).map_err(|error| unreadable(file, &error, words))
}

fn unreadable(file: &Path, error: &io::Error, words: &Words) -> Failure {
    let file = file.display().to_string();
    Failure::input(say!(words, "serve-certificate-unreadable", file = file, why = error.to_string()))
}
