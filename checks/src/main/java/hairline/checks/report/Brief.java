package hairline.checks.report;

import hairline.checks.rules.OperationBook;
import hairline.checks.stock.SurfaceShown;
import hairline.checks.timing.ProgramSummary;
import hairline.checks.warmth.ProgramTimeline;

/**
 * What a brief tells beside what every report does.
 *
 * @param book what the operations do
 * @param programNumber the program's number, such as O100; empty without one
 * @param sha256 the SHA-256 of its bytes in hexadecimal digits
 * @param bytes how many these are
 * @param deletable whether a block of it can be deleted by the switch
 * @param surface the part left, with its picture and a section along each feature
 * @param timeline the program along its time
 * @param summary what the program does as a whole
 */
public record Brief(
    OperationBook book,
    String programNumber,
    String sha256,
    long bytes,
    boolean deletable,
    SurfaceShown surface,
    ProgramTimeline timeline,
    ProgramSummary summary) {}
