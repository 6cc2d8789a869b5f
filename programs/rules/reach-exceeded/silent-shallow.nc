%
O1 (no deeper than the flutes are long: the shank need not be known)
G21 G90 G17 G94
G54
T5 M6
G43 H5
S30000 M3
G0 X-3. Y0. Z1.
Z-0.3
G1 X3. F100.
Z-0.5
X-3.
G0 Z1.
M5
M30
%
