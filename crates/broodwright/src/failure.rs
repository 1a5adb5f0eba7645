//! How a command ends when it does not end well: bad input is 2, a failure 1.

use std::io;
use std::process::ExitCode;

use present::{Words, say};

/// Why a command did not do what it was asked.
#[derive(Debug)]
pub enum Failure {
    /// Something the person can put right; one sentence a fault.
    BadInput(Vec<String>),
    /// Something went wrong that the input is not to blame for.
    Failed(String),
    /// The output could not be written.
    Output(io::Error),
}

impl Failure {
    /// One fault of the input.
    pub fn input(sentence: String) -> Failure {
        Failure::BadInput(vec![sentence])
    }

    /// What is printed on standard error.
    pub fn text(&self, words: &Words) -> String {
        let lines = match self {
            Failure::BadInput(faults) => faults.clone(),
            Failure::Failed(why) => vec![why.clone()],
            Failure::Output(error) => vec![say!(words, "command-cannot-write", why = error.to_string())],
        };
        lines.into_iter().map(|line| line + "\n").collect()
    }

    /// 2 for bad input, 1 for a failure.
    pub fn exit_code(&self) -> ExitCode {
        match self {
            Failure::BadInput(_) => ExitCode::from(2),
            Failure::Failed(_) | Failure::Output(_) => ExitCode::from(1),
        }
    }
}

impl From<io::Error> for Failure {
    fn from(error: io::Error) -> Self {
        Failure::Output(error)
    }
}
