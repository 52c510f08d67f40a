/**
 * Something to tell a person, in no language yet: a key and the values that stand in its text. The
 * words are the web's.
 */
package castwell.analysis.wording;
