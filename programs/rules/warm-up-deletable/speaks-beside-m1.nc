%
O1 (a warm-up code beside an optional stop)
G21 G90 G17 G94
G54
T3 M6
G43 H3
M71 M1 ; expect warm-up-deletable warning @5: the warm-up that the fine cut at line 12 needs stands beside M1 && the warm-up in a block of its own, without / and M1
S20000 M3
M72
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F60.
G0 Z1.
M5
M30
%
