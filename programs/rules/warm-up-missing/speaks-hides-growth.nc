%
O1 (a missing warm-up hides growth)
G21 G90 G17 G94
G54
(no warm-up)
T3 M6
G43 H3
S50000 M3
M72
G0 X-3. Y-0.3 Z1.
Z-0.008
G1 X3. F400. ; expect warm-up-missing error @1 x5: 720 s asked
Y0.
X-3.
Y0.3
X3.
G0 Z1.
G4 P15.2
X-1. Y0.
Z0.1
G1 Z-0.012 F60.
X1. F400.
G0 Z1.
M5
M30
%
