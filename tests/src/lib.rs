//! Holds no code; the tests are under `whole/`.
