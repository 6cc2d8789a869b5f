%
O1 (the upper level is uncut: growth since measuring counts)
G21 G90 G17 G94
G54
S20000
M71
T3 M6
G43 H3
S50000 M3
M72
G4 P15.2
G0 X-3. Y-0.3 Z1.
Z-0.008
G1 X3. F400. ; expect growth-exceeds-share error @1: step of 8 µm at least 0.3312 µm higher, allowed 0.33 µm && ahead of measuring
Y0.
X-3.
Y0.3
X3.
G0 Z1.
X-1. Y0.
Z0.1
G1 Z-0.012 F60.
X1. F170.
G0 Z1.
M5
M30
%
