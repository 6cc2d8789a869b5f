%
O1 (a quarter circle in radius form, and a half circle with its centre)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G2 X1. Y1. R1. F100.
G2 X3. I1. J0.
M30
%
