//! Kernels: one phenomenon a module, pure functions of typed quantities.
