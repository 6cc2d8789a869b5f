%
O1 (slow only at the end, a part of which lies in the air)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X-2.3 F600.
G61 X3. ; expect feed-not-reached warning: planned feed down to 0 mm/min, a chip needs 27 mm/min, programmed 600 mm/min: no chip on 0.019104 % of the contact length, allowed 10 %, and for 1.793 revolutions at a stretch, allowed 1
G64
G0 Z1.
M5
M30
%
