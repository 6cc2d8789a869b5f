%
O1 (a tool without a life)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-4. Y0. Z0.
G1 Z-0.02 F30.
X1. F100. ; not checked tool-life-exceeded: tools.5.life is not on the sheet
G0 Z1.
M5
M30
%
