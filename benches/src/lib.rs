//! Holds no code; the benchmarks are under `benches/`.
