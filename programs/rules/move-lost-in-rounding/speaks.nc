%
O1 (a move of less than half an increment)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G1 X1. F100.
X1.00004 ; expect move-lost-in-rounding warning @1: X 0.04 µm && resolution 0.1 µm | expect digits-below-resolution warning: error -0.04 µm && no digit finer than 0.1 µm && the control keeps whole increments of 0.1 µm (machine.resolution)
M30
%
