//! Published tables shipped with the program, with source and status.
