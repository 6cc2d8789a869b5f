%
O1 (how deep the ball cuts is not known; on its full diameter it would be too slow still)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S31830 M3
G0 X-3. Y0. Z1.
; expect below macro-unread warning: a condition
IF [#1 GT 2] GOTO 100
T3 M6
G43 H3
S31830 M3
G1 X0. Y0. F300.
G0 Z1.
X-3. Y0.1
Z-0.04
G1 X3. F300. ; expect surface-speed-off warning: surface speed at most 39.999 m/min, the tool wants 40 m/min to 160 m/min && π × 0.4 mm × 31830 rpm, the whole diameter, as the depth of cut is not known; range from tools.3.surface_speed && S31831 or more
G0 Z1.
M5
M30
%
