/** Where the program begins. All wiring is {@code wiring}'s, all commands are {@code cli}'s. */
package castwell.web;
