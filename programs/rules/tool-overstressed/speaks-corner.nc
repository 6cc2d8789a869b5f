%
O1 (an even stepover that the neck bears, into a corner that it does not)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y-0.05 Z1.
Z-0.1
G1 X1. F0.3
Y-3. F0.3
G0 Z1.
X-3. Y0.
Z-0.1
G1 X1.05 F0.7 ; expect tool-overstressed warning: half of the rupture strength
Y-3. F0.3
G0 Z1.
M5
M30
%
