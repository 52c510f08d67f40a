package castwell.analysis.cell;

/**
 * The names of what the shots of a cell share.
 *
 * @param state the name of the bow's state
 */
public record CellName(String bow, String state, String arrow, String session) {}
