package castwell.web.workbench;

/**
 * A page before it is put into its frame.
 *
 * @param template the template's file name, without its ending
 * @param view what the template shows
 */
public record Page(MenuEntry menuEntry, String template, String title, Object view) {}
