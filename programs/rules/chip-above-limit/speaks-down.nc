%
O1 (a plunge and a drilling cycle, just more than the tool bears)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X0. Y0. Z1.
Z0.1
G1 Z-0.02 F720.1 ; expect chip-above-limit error @1 x1: feed per tooth straight down 12.002 µm, the tool bears 12 µm && F720 or less at this speed && tool 3, 2 flutes: feed per tooth 720.1 mm/min / (30000 rpm × 2) = 12 µm && limit from tools.3.max_feed_per_tooth
G0 Z1.
G81 X1. Y0. Z-0.03 R0.1 F720.2 ; expect chip-above-limit error @1 x1: feed per tooth straight down 12.003 µm && F720 or less at this speed && tool 3, 2 flutes: feed per tooth 720.2 mm/min / (30000 rpm × 2) = 12 µm && limit from tools.3.max_feed_per_tooth
G80
G0 Z2.
M5
M30
%
