%
O1 (one repeat too many for a budget of a hundred steps)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P100 L32
M30
O100
G0 X1.
M99 ; expect budget-of-steps-reached error: the budget of 100 steps is used up
%
