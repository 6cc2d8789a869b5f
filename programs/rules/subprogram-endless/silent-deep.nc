%
O1 (calls two deep, where two are allowed)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
M98 P100
M30
O100
M98 P200
M99
O200
G0 X2.
M99
%
