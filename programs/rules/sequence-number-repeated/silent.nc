%
O1 (each number once)
N10 G21 G90 G17 G94
N20 G54
N30 G0 X0. Y0. Z1.
N40 M30
%
