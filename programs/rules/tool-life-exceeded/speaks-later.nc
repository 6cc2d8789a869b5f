%
O1 (told where it runs out, with all that it cuts)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-4. Y0. Z0.
G1 Z-0.02 F30.
X2. F100. ; expect tool-life-exceeded warning: tool 3 cuts over 9.02 mm, its life is 6 mm && it runs out at line 10; life from tools.3.life
X3.
G0 Z1.
X-4. Y0.5
Z-0.
G1 Z-0.02 F30.
X-2.02 F100.
G0 Z1.
M5
M30
%
