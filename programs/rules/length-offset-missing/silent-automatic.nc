%
O1 (the control takes the offset with the tool)
G21 G90 G17 G94
G54
T3 M6
G0 X0. Y0.
Z1.
M30
%
