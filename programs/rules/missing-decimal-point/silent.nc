%
O1 (points where they are due; zero needs none)
G21 G90 G17 G94
G54
G0 X0 Y0 Z1.
G1 X10. F100
M30
%
