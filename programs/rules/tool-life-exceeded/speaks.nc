%
O1 (a slot that is longer than the tool lasts, by a last digit)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z0.
G1 Z-0.02 F30.
X1. F100.
X1.9801 ; expect tool-life-exceeded warning @1: tool 3 cuts over 6.0001 mm, its life is 6 mm && it runs out at line 11; life from tools.3.life
G0 Z1.
M5
M30
%
