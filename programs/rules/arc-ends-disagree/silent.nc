%
O1 (2 um between the radii)
G21 G90 G17 G94
G54
G0 X0. Y0. Z1.
G2 X2.002 Y0. I1. J0. F100.
M30
%
