%
O1 (a terrace left out)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.004
G1 X0. F100.
Z-0.012
X3. ; expect step-differs error: step of stairs from -4 µm to -12 µm is 8 µm, declared 4 µm ±0.4 µm; 1 missing between
G0 Z1.
M5
M30
%
