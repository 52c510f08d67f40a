/**
 * Carries out what a person wants: tags, bows, arrows, plans, sessions, gates, decisions. Each
 * command is checked, committed, and only then announced. Page, terminal, broker and the board's
 * key all come in here.
 */
package castwell.capture.command;
