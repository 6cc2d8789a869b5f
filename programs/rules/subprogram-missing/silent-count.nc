%
O1 (a count in front of the number)
G21 G90
G54
G0 X0. Y0. Z1.
M98 P50100
M30
O0100
G0 X1.
G0 X0.
M99
%
