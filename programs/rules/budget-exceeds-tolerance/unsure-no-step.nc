%
O1 (the feature is cut, and all at one level)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-2.3 Y0.5 Z1. ; not checked budget-exceeds-tolerance: no step was found in shelf
Z-0.02
G1 X2.3 F100.
Y0.8
X-2.3
G0 Z1.
M5
M30
%
