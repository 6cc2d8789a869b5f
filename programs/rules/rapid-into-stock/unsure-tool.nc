%
O1 (a tool without a diameter)
G21 G90 G17 G94
G54
T7 M6
G43 H7
S30000 M3
G0 X0. Y0. Z1.
Z-0.1 ; not checked rapid-into-stock: tools.7.diameter is not on the sheet
G0 Z1.
M5
M30
%
