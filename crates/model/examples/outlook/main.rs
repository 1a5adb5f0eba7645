//! Prints how honest the outlook is: on real chicks of a diet that taught nothing, and on invented batches whose laws are not
//! the filter's. Build it for speed; it takes about a minute.

mod chicks;
mod houses;
mod invented_batches;
mod score;

fn main() {
    chicks::print();
    invented_batches::print();
}
