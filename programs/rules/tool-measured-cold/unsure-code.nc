%
O1 (what stands before measuring may be the warm-up)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M171 ; expect code-unknown warning | not checked tool-measured-cold: may be the warm-up
S20000 M3
M72
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60.
G0 Z1.
M5
M30
%
