%
O1 (increments throughout)
G21 G90 G17 G94
G54
G0 X0 Y0 Z10000
G1 X10 F100
M30
%
