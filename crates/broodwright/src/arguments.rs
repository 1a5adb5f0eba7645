//! The arguments, with every word out of the messages.

use std::ffi::OsString;
use std::path::PathBuf;

use advice::weighing::STANDARDS;
use clap::{Arg, ArgAction, ArgGroup, Command, value_parser};
use present::Words;
use present::batch::BATCH_SHEETS;
use present::plan::SHEETS;

/// The version with the commit it was built from.
pub const VERSION: &str = concat!(env!("CARGO_PKG_VERSION"), " (", env!("BROODWRIGHT_COMMIT"), ")");

/// The language asked for, found before anything is worded.
pub fn language(arguments: impl Iterator<Item = OsString>) -> present::Locale {
    let arguments: Vec<String> = arguments.filter_map(|argument| argument.into_string().ok()).collect();
    let behind = arguments.iter().position(|argument| argument == "--language").map(|at| at + 1);
    let joined = arguments.iter().find_map(|argument| argument.strip_prefix("--language="));
    crate::locale_of(joined.or_else(|| arguments.get(behind?).map(String::as_str)))
}

/// The whole command.
pub fn command(words: &Words) -> Command {
    Command::new("broodwright")
        .version(VERSION)
        .about(words.plain("command-about"))
        .subcommand_required(true)
        .arg_required_else_help(true)
        .arg(option("language", words).global(true).value_name("TAG"))
        .subcommand(plan(words))
        .subcommand(air(words))
        .subcommand(curtain(words))
        .subcommand(sums(words))
        .subcommand(verify(words))
        .subcommand(serve(words))
        .subcommand(record(words))
        .subcommand(walk(words))
        .subcommand(watch(words))
        .subcommand(purchases(words))
        .subcommand(outlook(words))
        .subcommand(weigh(words))
        .subcommand(sale(words))
        .subcommand(closing(words))
        .subcommand(history(words))
        .subcommand(export(words))
        .subcommand(import(words))
        .subcommand(sync(words))
        .subcommand(check(words))
        .subcommand(Command::new("schema").about(words.plain("command-schema")))
}

/// Stands for every sheet.
pub const ALL_SHEETS: &str = "all";

fn sheet(words: &Words) -> Arg {
    let names: Vec<&str> = SHEETS.iter().map(|sheet| sheet.name).chain([ALL_SHEETS]).collect();
    option("sheet", words).value_name("NAME").value_parser(names).num_args(1..).requires("pdf")
}

/// Which sheets of a running batch.
fn batch_sheet(words: &Words) -> Arg {
    let names: Vec<&str> = BATCH_SHEETS.into_iter().chain([ALL_SHEETS]).collect();
    let sheet = Arg::new("sheet").long("sheet").help(words.plain("option-batch-sheet"));
    sheet.value_name("NAME").value_parser(names).num_args(1..).requires("pdf")
}

fn pdf(words: &Words) -> Arg {
    option("pdf", words).value_name("OUT").value_parser(value_parser!(PathBuf))
}

fn paper(words: &Words) -> Arg {
    option("paper", words).value_name("PAPER").value_parser(["a4", "us-letter"]).default_value("a4")
}

fn plan(words: &Words) -> Command {
    Command::new("plan")
        .about(words.plain("command-plan"))
        .arg(file("FILE", "argument-plan-file", words))
        .args([flag("json", words), flag("working", words)])
        .arg(pdf(words))
        .arg(option("scenarios", words).value_name("OUT").value_parser(value_parser!(PathBuf)))
        .arg(option("curve", words).value_name("TABLE").value_parser(value_parser!(PathBuf)))
        .arg(option("ics", words).value_name("OUT").value_parser(value_parser!(PathBuf)))
        .arg(sheet(words))
        .arg(option("figure", words).value_name("NAME").requires("pdf"))
        // Sheets and calendar alone look into a book.
        .group(ArgGroup::new("out").args(["pdf", "ics"]).multiple(true))
        .args(book(words).map(|arg| arg.requires("out").help(words.plain("option-past-book"))))
        .arg(paper(words))
        .arg(units(words))
}

fn air(words: &Words) -> Command {
    let path = |name, value| Arg::new(name).long(name).value_name(value).value_parser(value_parser!(PathBuf));
    Command::new("air")
        .about(words.plain("command-air"))
        .after_help(words.plain("example-air"))
        .arg(file("FILE", "argument-plan-file", words))
        .args([flag("json", words), flag("working", words)])
        .arg(path("weather", "WEATHER").help(words.plain("option-weather")))
        .arg(
            option("members", words)
                .value_name("N")
                .value_parser(value_parser!(u32).range(10..=20_000))
                .conflicts_with_all(["weather", "csv"]),
        )
        .arg(path("readings", "READINGS").help(words.plain("option-readings")).requires("weather"))
        .arg(path("csv", "OUT").help(words.plain("option-air-csv")))
        .arg(units(words))
}

/// A plan file, or a batch of the book as of a day.
fn plan_or_batch(words: &Words) -> [Arg; 3] {
    let file = file("FILE", "argument-purchases-file", words).required(false);
    [
        file.conflicts_with_all(["batch", "on", "book", "database"]),
        option("batch", words).value_name("NAME"),
        option("on", words).value_name("DATE"),
    ]
}

fn curtain(words: &Words) -> Command {
    let ask = Arg::new("ask").long("ask").help(words.plain("option-ask")).value_name("key=value");
    Command::new("curtain")
        .about(words.plain("command-curtain"))
        .after_help(words.plain("example-curtain"))
        .args(plan_or_batch(words))
        .arg(ask.num_args(1..))
        .args([flag("json", words), flag("working", words)])
        .args(book(words))
        .arg(units(words))
}

fn sums(words: &Words) -> Command {
    Command::new("sums")
        .about(words.plain("command-sums"))
        .arg(Arg::new("NAME").help(words.plain("argument-sum-name")))
        .arg(Arg::new("INPUT").help(words.plain("argument-sum-input")).value_name("key=value").num_args(0..))
        .args([flag("json", words), flag("working", words)])
        .arg(units(words))
}

fn verify(words: &Words) -> Command {
    Command::new("verify")
        .about(words.plain("command-verify"))
        .arg(file("TABLE", "argument-table", words))
        .arg(flag("json", words))
}

fn serve(words: &Words) -> Command {
    Command::new("serve")
        .about(words.plain("command-serve"))
        .arg(flag("demo", words).conflicts_with_all(["book", "database"]))
        .args(book(words))
        .after_help(words.plain("example-serve"))
        .arg(option("listen", words).value_name("ADDR").default_value("127.0.0.1:8080"))
        .arg(option("network", words).value_name("ADDR").conflicts_with("demo"))
        .arg(option("name", words).value_name("NAME").requires("network"))
        .args([("certificate", "key"), ("key", "certificate")].map(|(one, other)| {
            let file = option(one, words).value_name("FILE").value_parser(value_parser!(PathBuf));
            file.requires("network").requires(other)
        }))
}

fn record(words: &Words) -> Command {
    Command::new("record")
        .about(words.plain("command-record"))
        .after_help(words.plain("example-record"))
        .arg(Arg::new("KIND").help(words.plain("argument-kind")))
        .arg(
            Arg::new("INPUT")
                .help(words.plain("argument-record-input"))
                .value_name("key=value")
                .num_args(0..),
        )
        .arg(option("batch", words).value_name("NAME"))
        .arg(option("day", words).value_name("DATE"))
        .arg(option("reason", words).value_name("TEXT"))
        .arg(option("correct", words).value_name("ENTRY").conflicts_with_all(["withdraw", "from"]))
        .arg(option("withdraw", words).value_name("ENTRY").conflicts_with_all(["from", "KIND", "day"]))
        .arg(
            option("from", words)
                .value_name("FILE")
                .value_parser(value_parser!(PathBuf))
                .conflicts_with_all(["KIND", "day"]),
        )
        .args([flag("sure", words), flag("json", words)])
        .arg(flag("good-only", words).requires("from"))
        .args(book(words))
}

fn walk(words: &Words) -> Command {
    of_a_day(Command::new("walk"), "command-walk", "example-walk", words)
}

fn watch(words: &Words) -> Command {
    of_a_day(Command::new("watch"), "command-watch", "example-watch", words)
}

/// What a command is told that shows a batch as of a day.
fn of_a_day(command: Command, about: &str, example: &str, words: &Words) -> Command {
    command
        .about(words.plain(about))
        .after_help(words.plain(example))
        .arg(option("batch", words).value_name("NAME"))
        .arg(option("on", words).value_name("DATE"))
        .args([flag("json", words), pdf(words), batch_sheet(words), paper(words)])
        .args(book(words))
        .arg(units(words))
}

fn outlook(words: &Words) -> Command {
    let out = Arg::new("scenarios").long("scenarios").value_name("OUT").value_parser(value_parser!(PathBuf));
    Command::new("outlook")
        .about(words.plain("command-outlook"))
        .after_help(words.plain("example-outlook"))
        .arg(option("batch", words).value_name("NAME"))
        .arg(option("on", words).value_name("DATE"))
        .arg(flag("json", words))
        .arg(out.help(words.plain("option-outlook-scenarios")))
        .args(book(words))
        .arg(units(words))
}

fn sale(words: &Words) -> Command {
    of_money(Command::new("sale"), "command-sale", "example-sale", words)
}

fn closing(words: &Words) -> Command {
    of_money(Command::new("closing"), "command-closing", "example-closing", words)
}

/// What a command is told that shows the money of a batch as of a day.
fn of_money(command: Command, about: &str, example: &str, words: &Words) -> Command {
    command
        .about(words.plain(about))
        .after_help(words.plain(example))
        .arg(option("batch", words).value_name("NAME"))
        .arg(option("on", words).value_name("DATE"))
        .args([flag("json", words), flag("working", words), pdf(words), paper(words)])
        .args(book(words))
        .arg(units(words))
}

fn purchases(words: &Words) -> Command {
    Command::new("purchases")
        .about(words.plain("command-purchases"))
        .after_help(words.plain("example-purchases"))
        .args(plan_or_batch(words))
        .arg(flag("json", words))
        .args(book(words))
        .arg(units(words))
}

fn weigh(words: &Words) -> Command {
    Command::new("weigh")
        .about(words.plain("command-weigh"))
        .after_help(words.plain("example-weigh"))
        .arg(file("FILE", "argument-weigh-file", words))
        .args([flag("json", words), flag("working", words)])
        .arg(Arg::new("day").long("day").help(words.plain("option-age")).value_name("N"))
        .arg(option("expected", words).value_name("G"))
        .arg(option("standard", words).value_parser(STANDARDS).default_value(STANDARDS[1]))
        .arg(Arg::new("birds").long("birds").help(words.plain("option-weigh-birds")).value_name("N"))
        .arg(option("within", words).value_name("PERCENT"))
        .arg(option("step", words).value_name("G"))
        .args([pdf(words), paper(words), units(words)])
}

fn history(words: &Words) -> Command {
    Command::new("history")
        .about(words.plain("command-history"))
        .after_help(words.plain("example-history"))
        .arg(Arg::new("WHAT").help(words.plain("argument-history-what")))
        .arg(option("batch", words).value_name("NAME"))
        .arg(option("day", words).value_name("DATE"))
        .arg(flag("json", words))
        .args(book(words))
        .arg(units(words))
}

fn export(words: &Words) -> Command {
    Command::new("export")
        .about(words.plain("command-export"))
        .after_help(words.plain("example-export"))
        .arg(file("FILE", "argument-export-file", words).required(false))
        .args(book(words))
}

fn import(words: &Words) -> Command {
    Command::new("import")
        .about(words.plain("command-import"))
        .after_help(words.plain("example-import"))
        .arg(file("FILE", "argument-import-file", words))
        .arg(flag("good-only", words))
        .args(book(words))
}

fn sync(words: &Words) -> Command {
    Command::new("sync")
        .about(words.plain("command-sync"))
        .after_help(words.plain("example-sync"))
        .arg(Arg::new("URL").required(true).help(words.plain("argument-sync-url")))
        .args(book(words))
}

fn check(words: &Words) -> Command {
    Command::new("check")
        .about(words.plain("command-check"))
        .after_help(words.plain("example-check"))
        .arg(
            file("FILE", "argument-check-file", words)
                .required(false)
                .conflicts_with_all(["book", "database"]),
        )
        .args(book(words))
}

/// Which book.
fn book(words: &Words) -> [Arg; 2] {
    [
        option("book", words).value_name("FILE").value_parser(value_parser!(PathBuf)),
        option("database", words).value_name("URL").conflicts_with("book"),
    ]
}

fn file(name: &'static str, message: &str, words: &Words) -> Arg {
    Arg::new(name).help(words.plain(message)).required(true).value_parser(value_parser!(PathBuf))
}

fn flag(name: &'static str, words: &Words) -> Arg {
    option(name, words).action(ArgAction::SetTrue)
}

fn option(name: &'static str, words: &Words) -> Arg {
    Arg::new(name).long(name).help(words.plain(&format!("option-{name}")))
}

fn units(words: &Words) -> Arg {
    option("units", words).value_name("UNITS").value_parser(["metric", "customary"])
}
