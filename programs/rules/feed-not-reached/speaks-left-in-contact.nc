%
O1 (the last move ends in the material)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X-2.3 F600.
X0. ; expect feed-not-reached warning: planned feed down to 0 mm/min, a chip needs 27 mm/min, programmed 600 mm/min: no chip on 0.044022 % of the contact length, allowed 10 %, and for 2.25 revolutions at a stretch, allowed 1
M5
M30
%
