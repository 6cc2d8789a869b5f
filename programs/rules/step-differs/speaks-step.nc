%
O1 (the second step half a micron too high)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.0044
G1 X0. F100.
Z-0.0089
X3. ; expect step-differs error: step of stairs from -4.4 µm to -8.9 µm is 4.5 µm, declared 4 µm ±0.4 µm: off by 0.5 µm
G0 Z1.
M5
M30
%
