%
O1 (a tooth moves on by just more than the tool bears)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X3. F720.1 ; expect chip-above-limit error @1: feed per tooth 12.002 µm, the tool bears 12 µm && F720 or less at this speed && tool 3, 2 flutes: feed per tooth 720.1 mm/min / (30000 rpm × 2) = 12 µm && limit from tools.3.max_feed_per_tooth
G0 Z1.
M5
M30
%
