/**
 * Whether a shot fits another bow or arrow clearly better than its tags, by what earlier shots lead
 * one to expect. Which shots are asked is the caller's choice.
 */
package castwell.analysis.misfit;
