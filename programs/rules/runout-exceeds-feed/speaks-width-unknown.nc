%
O1 (a full slot would leave a tooth idle as well)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
; expect below macro-unread warning: a condition
IF [#1 GT 2] GOTO 100
T3 M6
G43 H3
S30000 M3
G1 X0. Y0. F300.
G0 Z1.
X-3. Y0.1
Z-0.04
G1 X3. F48. ; expect runout-exceeds-feed warning: runout 0.8 µm, largest advance of a tooth across its edge 0.8 µm && tool 3, 2 flutes: feed per tooth 48 mm/min / (30000 rpm × 2) = 0.8 µm && width of cut not known: a full slot is the upper bound && runout from tools.3.runout && a feed per tooth above 0.8 µm, or a tool clamped to less runout
G0 Z1.
M5
M30
%
