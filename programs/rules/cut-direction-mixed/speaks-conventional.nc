%
O1 (one wall of each direction: the later one is pointed at)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.1
G1 X3. F100.
G0 Z1.
Y0.1
X3.
Z-0.1
G1 X-3.
G0 Z1.
Y-0.1
X3.
Z-0.1
G1 X-3. ; expect cut-direction-mixed note: walls of channel are cut climb, first at line 15, and conventional, first at line 20 && moves along walls that are left standing: 1 climb, 1 conventional
G0 Z1.
M5
M30
%
