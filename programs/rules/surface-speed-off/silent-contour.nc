%
O1 (a ball along a slope, on diameter enough)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S60000 M3
G0 X-1. Y0. Z1.
G1 Z0. F300.
G1 X0. Z-0.1
G1 X1. Z-0.12
G0 Z1.
M5
M30
%
