/** Holds the words: one file of texts a language, and how a person is spoken to. */
package castwell.web.text;
