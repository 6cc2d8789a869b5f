%
O1 (a control with an increment of its own under inch)
G20 G90 G17 G94
G54
G0 X0. Y0. Z0.1
G1 X0.00001 F5.
M30
%
