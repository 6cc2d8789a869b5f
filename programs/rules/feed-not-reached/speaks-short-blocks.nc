%
O1 (a fine contour in blocks of 2 um: the control reads one in 5 ms)
G21 G90 G17 G94
G54
T3 M6
G43 H3
S30000 M3
G0 X-3. Y0. Z1.
Z-0.02
G1 X0. F600. ; expect feed-not-reached warning: planned feed down to 24 mm/min, a chip needs 27 mm/min && programmed 600 mm/min && slowest at line 10; tool 3, 2 flutes: feed per tooth 600 mm/min / (30000 rpm × 2) = 10 µm; planned with machine.acceleration, machine.jerk, machine.control.block_time and machine.control.path_tolerance
X0.0020
X0.0040
X0.0060
X0.0080
X0.0100
X0.0120
X0.0140
X0.0160
X0.0180
X0.0200
X0.0220
X0.0240
X0.0260
X0.0280
X0.0300
X0.0320
X0.0340
X0.0360
X0.0380
X0.0400
X0.0420
X0.0440
X0.0460
X0.0480
X0.0500
X0.0520
X0.0540
X0.0560
X0.0580
X0.0600
X0.0620
X0.0640
X0.0660
X0.0680
X0.0700
X0.0720
X0.0740
X0.0760
X0.0780
X0.0800
X0.0820
X0.0840
X0.0860
X0.0880
X0.0900
X0.0920
X0.0940
X0.0960
X0.0980
X0.1000
X0.1020
X0.1040
X0.1060
X0.1080
X0.1100
X0.1120
X0.1140
X0.1160
X0.1180
X0.1200
X3.
G0 Z1.
M5
M30
%
