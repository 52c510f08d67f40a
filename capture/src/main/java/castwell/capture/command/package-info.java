/**
 * What a person may say: tags, bows, arrows, plans, sessions, gates, decisions. Each is checked,
 * committed, and only then announced. Page, terminal, broker and board's key all come in here.
 */
package castwell.capture.command;
