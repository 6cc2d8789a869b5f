%
O1 (a repeat count that the keyboard repeated)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P100 L1000000000 ; expect budget-of-steps-reached error @1: 1000000000 repeats are more than the budget of 50000000 steps && the first of them were followed
M30
O100
G0 X1.
M99
%
