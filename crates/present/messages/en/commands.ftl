## The command line.

sum-space = How many birds does a floor carry?
sum-ring = A brooder ring from sheets
sum-dilution = Mix a tank by the label
sum-litter = Litter for a floor
