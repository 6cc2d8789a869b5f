%
O1 (measured after 1.5 s run-up and 718.5 s dwell: 720 s)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S20000 M3
G4 P718.5
M72
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60.
G0 Z1.
M5
M30
%
