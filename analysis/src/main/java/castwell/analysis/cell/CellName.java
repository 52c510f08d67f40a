package castwell.analysis.cell;

/**
 * What the shots of a cell share.
 *
 * @param state names the bow's state
 */
public record CellName(String bow, String state, String arrow, String session) {}
